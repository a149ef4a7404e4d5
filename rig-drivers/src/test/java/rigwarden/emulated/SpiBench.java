package rigwarden.emulated;

import java.util.HexFormat;

/** What chips on an SPI bus are wired to in tests: every quantity is set by hand, and the clock stands until it is moved. */
final class SpiBench implements Max31856Emulator.Wiring, Max31855Emulator.Wiring, Ads1220Emulator.Wiring {
    long nanos = 1_000_000_000_000L;
    double emfMillivolts;
    double coldCelsius = 25;
    boolean open;
    boolean outsideSupply;
    boolean shortedToGround;
    boolean shortedToSupply;
    final double[] pins = new double[4];
    final double[] references = new double[2];
    double dieCelsius = 25;

    void pass(double seconds) {
        nanos += Math.round(seconds * 1e9);
    }

    /** The probe that a chip of this type hangs on has its tip at this temperature. */
    void tip(Couple couple, double celsius) {
        emfMillivolts = couple.millivolts(celsius, coldCelsius);
    }

    /** One frame under the select, written and answered in hexadecimal digits. */
    static String frame(SpiTarget chip, String sent) {
        byte[] bytes = HexFormat.of().parseHex(sent.replace(" ", ""));
        byte[] driven = new byte[bytes.length];
        chip.selected(true);
        chip.exchanged(bytes, driven, bytes.length);
        chip.selected(false);
        return HexFormat.ofDelimiter(" ").withUpperCase().formatHex(driven);
    }

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public double emfMillivolts() {
        return emfMillivolts;
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
    public boolean outsideSupply() {
        return outsideSupply;
    }

    @Override
    public boolean shortedToGround() {
        return shortedToGround;
    }

    @Override
    public boolean shortedToSupply() {
        return shortedToSupply;
    }

    @Override
    public double inputVolts(int pin) {
        return pins[pin];
    }

    @Override
    public double referenceVolts(int pair) {
        return references[pair];
    }

    @Override
    public double dieCelsius() {
        return dieCelsius;
    }
}
