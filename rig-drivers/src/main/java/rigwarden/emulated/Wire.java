package rigwarden.emulated;

/** What carries the transfers of one I2C bus to its chips. Something that meddles with them sits on another wire. */
interface Wire {
    /** A write transfer to an address; answers as {@link I2cTarget#written} does, −1 where nobody is. */
    int written(int address, byte[] bytes, int offset, int length);

    /** A read transfer from an address; answers as {@link I2cTarget#read} does, −1 where nobody is. */
    int read(int address, byte[] into, int offset, int length);

    /** The same meddling in the same state over another bus, whose clock is given. */
    Wire onto(Wire base, VirtualClock clock);
}
