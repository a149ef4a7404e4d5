package rigwarden.bus;

/** An exception that carries the kernel's error number, as the emulated provider throws where the official one carries it too. */
public interface WithErrno {
    /** Number of {@code errno(3)}, positive. */
    int errno();
}
