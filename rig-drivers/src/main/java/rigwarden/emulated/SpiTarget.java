package rigwarden.emulated;

/** One chip as an SPI bus sees it: a chip select, and bytes that pass while it is active. Emulators implement this. */
public interface SpiTarget {
    /**
     * Whether the chip samples and shifts on the edges of an SPI mode. In any other mode all bits arrive one late.
     *
     * @param mode 0 to 3: bit 0 is the clock's phase, bit 1 its polarity
     */
    boolean understands(int mode);

    /** The chip select goes to its active level, or leaves it. Told changes only; inactive at first. */
    void selected(boolean active);

    /**
     * Bytes that pass while the select is active, both ways at once.
     *
     * @param sent what the host shifts out; not to be changed
     * @param driven what the chip shifts out, FFh where it leaves its output floating
     * @return bytes from the first on that the chip clocked out; the line is left alone for the rest
     */
    int exchanged(byte[] sent, byte[] driven, int length);
}
