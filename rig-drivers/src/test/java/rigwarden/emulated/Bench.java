package rigwarden.emulated;

/** What the emulators are wired to in tests: every quantity is set by hand, and the clock stands until it is moved. */
final class Bench implements Ina226Emulator.Wiring, Ina228Emulator.Wiring, Ads1115Emulator.Wiring,
        Mcp9601Emulator.Wiring {
    long nanos = 1_000_000_000_000L;
    double shuntVolts;
    double voltSeconds;
    double busVolts;
    double commonModeVolts;
    double dieCelsius = 25;
    final double[] pins = new double[4];
    double hotCelsius = 25;
    double coldCelsius = 25;
    boolean open;
    boolean shorted;

    /** Lets time go by with the shunt's volts as they stand. */
    void pass(double seconds) {
        nanos += Math.round(seconds * 1e9);
        voltSeconds += seconds * shuntVolts;
    }

    static long read(I2cTarget chip, int register, int bytes) {
        byte[] into = new byte[bytes];
        if (chip.written(new byte[] {(byte) register}, 0, 1) != 1 || chip.read(into, 0, bytes) != bytes) {
            throw new AssertionError("register " + register + " does not deliver " + bytes + " bytes");
        }
        long word = into[0];
        for (int i = 1; i < bytes; i++) {
            word = word << 8 | into[i] & 0xFF;
        }
        return word;
    }

    static int unsigned16(I2cTarget chip, int register) {
        return (int) read(chip, register, 2) & 0xFFFF;
    }

    static int write16(I2cTarget chip, int register, int word) {
        return chip.written(new byte[] {(byte) register, (byte) (word >> 8), (byte) word}, 0, 3);
    }

    static int write8(I2cTarget chip, int register, int word) {
        return chip.written(new byte[] {(byte) register, (byte) word}, 0, 2);
    }

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public double shuntVolts() {
        return shuntVolts;
    }

    @Override
    public double shuntVoltSeconds() {
        return voltSeconds;
    }

    @Override
    public double busVolts() {
        return busVolts;
    }

    @Override
    public double commonModeVolts() {
        return commonModeVolts;
    }

    @Override
    public double dieCelsius() {
        return dieCelsius;
    }

    @Override
    public double inputVolts(int pin) {
        return pins[pin];
    }

    @Override
    public double hotCelsius() {
        return hotCelsius;
    }

    @Override
    public double coldCelsius() {
        return coldCelsius;
    }

    @Override
    public boolean open() {
        return open;
    }

    @Override
    public boolean shorted() {
        return shorted;
    }
}
