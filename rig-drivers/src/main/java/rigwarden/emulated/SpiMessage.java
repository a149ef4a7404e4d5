package rigwarden.emulated;

/**
 * What a host's controller is told to shift out.
 *
 * @param select number of the controller's own chip select
 * @param mode 0 to 3
 * @param kept whether the select stays active until the next message
 * @param bytes to be sent; never changed
 */
record SpiMessage(int select, int mode, boolean kept, byte[] bytes) {
    int length() {
        return bytes.length;
    }

    SpiMessage to(int otherSelect) {
        return new SpiMessage(otherSelect, mode, kept, bytes);
    }

    SpiMessage with(byte[] otherBytes) {
        return new SpiMessage(select, mode, kept, otherBytes);
    }
}
