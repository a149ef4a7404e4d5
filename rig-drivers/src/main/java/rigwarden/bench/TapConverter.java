package rigwarden.bench;

import rigwarden.bus.BusFailure;
import rigwarden.chip.ads1115.Ads1115;
import rigwarden.chip.ads1220.Ads1220;

/** A converter with several inputs, of which it converts one at a time. */
interface TapConverter {
    void start(int input) throws BusFailure;

    /** Time after the start at which the result must be there, ns. */
    long conversionNanos();

    /** Takes the code of the input that was started. */
    int finish(int input) throws BusFailure;

    static TapConverter of(Ads1115 chip) {
        return new TapConverter() {
            @Override
            public void start(int input) throws BusFailure {
                chip.start(input);
            }

            @Override
            public long conversionNanos() {
                return chip.conversionNanos();
            }

            @Override
            public int finish(int input) throws BusFailure {
                return chip.finish(input);
            }
        };
    }

    static TapConverter of(Ads1220 chip) {
        return new TapConverter() {
            @Override
            public void start(int input) throws BusFailure {
                chip.start(input);
            }

            @Override
            public long conversionNanos() {
                return chip.conversionNanos();
            }

            @Override
            public int finish(int input) throws BusFailure {
                return chip.finish(input);
            }
        };
    }
}
