package rigwarden.emulated;

import rigwarden.rig.Device;

/**
 * A programmable source or sink at the far end of its serial line.
 *
 * @param end what understands the orders
 * @param line what carries them
 */
record EmulatedInstrument(FarEnd end, EmulatedLine line) {
    private EmulatedInstrument(FarEnd end) {
        this(end, new EmulatedLine(end));
    }

    EmulatedInstrument(Device.Programmed device, Terminals terminals, ScpiInstrument.Errors errors, VirtualClock clock) {
        this(FarEnd.of(device, terminals, errors, clock));
    }

    EmulatedInstrument copy(Terminals terminals, VirtualClock clock) {
        FarEnd copied = end.copy(terminals, clock);
        return new EmulatedInstrument(copied, line.copy(copied, EmulatedInstrument::nothing, clock));
    }

    /** A slice of waiting on an emulated line takes no time. */
    private static void nothing() {}
}
