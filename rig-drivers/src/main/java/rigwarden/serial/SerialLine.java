package rigwarden.serial;

/**
 * One serial port as an agent sees it, real or emulated. No method throws: a lost port is a value, because it is an
 * ordinary event on a bench.
 */
public interface SerialLine extends AutoCloseable {
    /** Opens the port; false when it is not there or in use by another program. */
    boolean open();

    /**
     * Sends bytes.
     *
     * @return the count sent; anything but {@code length} means that the port is lost
     */
    int write(byte[] bytes, int length);

    /**
     * Takes what has arrived, waiting at most one slice (100 ms) for the first byte.
     *
     * @return the count taken; 0 when the slice ended without a byte; −1 when the port is lost
     */
    int read(byte[] into);

    @Override
    void close();
}
