package rigwarden.kernel;

/** One opening of a device node. Counts are as the kernel's calls give them; a negative one is an error number. */
interface OpenNode {
    /** {@code read(2)}. */
    int read(byte[] into);

    /** {@code write(2)}. */
    int write(byte[] bytes);

    /** {@code ioctl(2)}; called again with more memory as long as it asks for more. */
    Ioctl.Answer ioctl(Ioctl asked);
}
