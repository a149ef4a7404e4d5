package rigwarden.emulated;

/** One chip as the wire sees it: what a transfer to its address does. Emulators implement this and nothing else. */
public interface I2cTarget {
    /**
     * A write transfer addressed to the chip.
     *
     * @return bytes acknowledged, pointer byte included; −1 when the address itself is not acknowledged
     */
    int written(byte[] bytes, int offset, int length);

    /**
     * A read transfer, from where the chip's pointer stands.
     *
     * @return bytes delivered; −1 when the address is not acknowledged
     */
    int read(byte[] into, int offset, int length);
}
