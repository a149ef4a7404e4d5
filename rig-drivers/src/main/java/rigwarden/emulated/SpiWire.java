package rigwarden.emulated;

/** What carries the messages of one SPI bus to its chips. Something that meddles with them sits on another wire. */
interface SpiWire {
    /**
     * One message of the host's controller.
     *
     * @param message where to, and how
     * @param got what arrives from the bus
     * @return bytes that have passed; −1 when the controller reports that it could not
     */
    int carried(SpiMessage message, byte[] got);

    /** The same meddling in the same state over another bus, whose clock is given. */
    SpiWire onto(SpiWire base, VirtualClock clock);
}
