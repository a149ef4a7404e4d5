package rigwarden.emulated;

/** What carries messages between one serial port and its instrument. Something that meddles with them is another port. */
interface Port {
    /** Bytes on their way to the instrument. */
    void send(byte[] bytes, int length);

    /** Bytes of answers that have arrived. */
    int pending();

    /** Hands over answers, as many as there is room for. */
    int take(byte[] into);

    /** The same meddling in the same state over another instrument. */
    Port onto(Port base, VirtualClock clock);
}
