package rigwarden.emulated;

/** A wire with which nothing is wrong. */
final class StraightWire implements Wire {
    private final I2cTarget[] chips;

    StraightWire(I2cTarget[] chips) {
        this.chips = chips;
    }

    @Override
    public int written(int address, byte[] bytes, int offset, int length) {
        return chips[address] == null ? -1 : chips[address].written(bytes, offset, length);
    }

    @Override
    public int read(int address, byte[] into, int offset, int length) {
        return chips[address] == null ? -1 : chips[address].read(into, offset, length);
    }

    @Override
    public Wire onto(Wire base, VirtualClock clock) {
        return base;
    }
}
