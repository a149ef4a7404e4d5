package rigwarden.emulated;

/**
 * Transactions that a board has carried since it was made, one count for each call of a driver, failed ones included.
 * Plain fields, because one thread owns a board.
 */
public final class Traffic {
    /** Register reads: pointer write, repeated start, read; one transaction. */
    public long registerReads;

    /** Register writes: pointer and data in one transfer. */
    public long registerWrites;

    /** Reads without a pointer. */
    public long plainReads;

    /** Writes that the driver framed itself. */
    public long plainWrites;

    /** Messages of the SPI buses, whatever was sent or read in them. */
    public long spiMessages;

    /** Levels read from inputs. */
    public long gpioReads;

    /** Levels written to outputs; the level that goes out with the claim is not one of them. */
    public long gpioWrites;

    /** All I2C transactions. */
    public long i2c() {
        return registerReads + registerWrites + plainReads + plainWrites;
    }

    /** All transactions. */
    public long all() {
        return i2c() + spiMessages + gpioReads + gpioWrites;
    }
}
