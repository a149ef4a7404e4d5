package rigwarden.emulated;

import rigwarden.loop.Clock;
import rigwarden.rig.Commands;
import rigwarden.rig.Device;
import rigwarden.rig.Instrument;
import rigwarden.rig.RegisterMap;

/** An instrument as its line and its terminals see it, in whatever language it is spoken to. */
public interface FarEnd {
    /** Takes bytes from the link. */
    void receive(byte[] bytes, int length);

    /** The link has been still for long enough to end a message, in languages where that is what ends it. */
    void still();

    /** Bytes of answers that wait to be taken. */
    int pending();

    /** Hands over answers, as many as there is room for. */
    int take(byte[] into);

    /** Drops all waiting bytes but the first so many. */
    void cut(int keep);

    /** Lets orders be acknowledged but not followed. */
    void deaf(boolean deaf);

    /** It looks at its own limits, and switches off when they are passed; the world's to call. */
    void protect();

    /** Whether its own limit has ever switched it off. */
    boolean protectedItself();

    /** The same instrument in the same state on other terminals, which are told nothing. */
    FarEnd copy(Terminals newTerminals, VirtualClock clock);

    /** What stands at the far end of a device's line, just switched on. */
    static FarEnd of(Device.Programmed device, Terminals terminals, ScpiInstrument.Errors errors, Clock clock) {
        Instrument instrument = device.instrument();
        ScpiInstrument.Ratings ratings = new ScpiInstrument.Ratings(instrument.maxVolts(), instrument.maxAmps());
        return switch (instrument.speech()) {
            case Commands _ -> device.charges()
                    ? ScpiInstrument.source(terminals, errors, ratings)
                    : ScpiInstrument.sink(terminals, errors, ratings);
            case RegisterMap map -> new ModbusInstrument(map, terminals, errors, ratings, clock);
        };
    }
}
