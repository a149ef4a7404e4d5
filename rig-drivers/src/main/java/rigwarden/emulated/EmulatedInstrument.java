package rigwarden.emulated;

import rigwarden.rig.Device;
import rigwarden.rig.Instrument;

/**
 * A programmable source or sink at the far end of its serial line.
 *
 * @param scpi what understands the orders
 * @param line what carries them
 */
record EmulatedInstrument(ScpiInstrument scpi, EmulatedLine line) {
    private EmulatedInstrument(ScpiInstrument scpi) {
        this(scpi, new EmulatedLine(scpi));
    }

    EmulatedInstrument(Device.Programmed device, Terminals terminals, ScpiInstrument.Errors errors) {
        this(device.charges()
                ? ScpiInstrument.source(terminals, errors, ratings(device.instrument()))
                : ScpiInstrument.sink(terminals, errors, ratings(device.instrument())));
    }

    private static ScpiInstrument.Ratings ratings(Instrument instrument) {
        return new ScpiInstrument.Ratings(instrument.maxVolts(), instrument.maxAmps());
    }

    EmulatedInstrument copy(Terminals terminals, VirtualClock clock) {
        ScpiInstrument copied = scpi.copy(terminals);
        return new EmulatedInstrument(copied, line.copy(copied, EmulatedInstrument::nothing, clock));
    }

    /** A slice of waiting on an emulated line takes no time. */
    private static void nothing() {}
}
