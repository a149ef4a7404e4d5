package rigwarden.bench;

import java.util.function.LongSupplier;
import rigwarden.bus.BusFailure;
import rigwarden.chip.ads1115.Ads1115;
import rigwarden.chip.ads1220.Ads1220;

/**
 * A converter with several inputs, of which it converts one at a time.
 *
 * @param start begins the conversion of an input
 * @param conversionNanos time after the start at which the result must be there, ns
 * @param finish takes the code of the input that was started
 */
record TapConverter(Start start, LongSupplier conversionNanos, Finish finish) {
    /** May fail as any transfer may. */
    interface Start {
        void at(int input) throws BusFailure;
    }

    /** May fail as any transfer may. */
    interface Finish {
        int at(int input) throws BusFailure;
    }

    static TapConverter of(Ads1115 chip) {
        return new TapConverter(chip::start, chip::conversionNanos, chip::finish);
    }

    static TapConverter of(Ads1220 chip) {
        return new TapConverter(chip::start, chip::conversionNanos, chip::finish);
    }
}
