package rigwarden.chip.ina228;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ChipClockTest {
    private static final long CYCLE = 33_664_000;

    @Test
    void aClockHalfAPerCentOffIsLearntInThreeEdgesAndStaysCounted() {
        // published (SLYS021A, electrical characteristics): the chip's oscillator is within 0.5 %
        for (double ratio : new double[] {0.995, 0.9987, 1, 1.0031, 1.005}) {
            Random jitter = new Random(5);
            ChipClock clock = ChipClock.UNKNOWN;
            double edge = 0;
            for (long due : new long[] {0, 1, 10, 70, 130, 190, 250}) {
                while (edge < due * 1e9) {
                    edge += CYCLE * ratio;
                }
                clock = clock.with((long) edge + jitter.nextInt(250_000), CYCLE);
            }

            assertThat(clock.ratio()).isCloseTo(ratio, within(1.1e-6));
            assertThat(clock.edges()).isEqualTo(7);
        }
    }

    @Test
    void afterALongSilenceTheCountBeginsAnewAndTheRatioIsKept() {
        ChipClock known = ChipClock.UNKNOWN.with(0, CYCLE).with(30 * CYCLE + 303_000, CYCLE);

        ChipClock anew = known.with(400_000_000_000L, CYCLE);

        assertThat(known.ratio()).isCloseTo(1.0003, within(1e-6));
        assertThat(anew.ratio()).isEqualTo(known.ratio());
        assertThat(anew.edges()).isEqualTo(1);
    }
}
