package rigwarden.chip.ads1115;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.bus.NoReading;
import rigwarden.loop.Clock;
import rigwarden.warden.Failure;

/** One converter. It keeps nothing between two conversions. */
public final class Ads1115 {
    /** Its rate is only good to ± 10 % (SBAS444E, electrical characteristics); the next poll would cost as much again. */
    private static final long WAIT_NANOS = Ads1115Codec.CONVERSION_NANOS * 112 / 100;

    private final Chip chip;

    public Ads1115(Chip chip) {
        this.chip = chip;
    }

    /**
     * Converts one input: a write, the wait, two reads.
     *
     * @param input pin AIN0…AIN3
     * @param clock for the wait
     * @return the code, 125 µV each
     * @throws NoReading when nothing answers, the conversion is not done in time or the chip has lost its configuration
     */
    public long convert(int input, Clock clock) throws NoReading {
        int start = Ads1115Codec.start(input);
        try {
            chip.write(Ads1115Codec.CONFIG, start, 2);
            clock.sleepUntil(clock.nanos() + WAIT_NANOS);
            long config = chip.read(Ads1115Codec.CONFIG, 2);
            if ((config | Ads1115Codec.READY) != start) {
                throw new NoReading(Failure.CONFIGURATION_LOST);
            }
            if ((config & Ads1115Codec.READY) == 0) {
                throw new NoReading(Failure.NOT_READY);
            }
            return Ads1115Codec.code(chip.read(Ads1115Codec.CONVERSION, 2));
        } catch (BusFailure e) {
            throw new NoReading(Failure.NO_ANSWER);
        }
    }
}
