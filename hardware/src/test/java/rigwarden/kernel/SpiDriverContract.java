package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import com.pi4j.context.Context;
import java.util.ArrayList;
import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.bus.ReadyLine;
import rigwarden.bus.SpiNode;
import rigwarden.chip.ads1220.Ads1220;
import rigwarden.chip.ads1220.Ads1220Codec;
import rigwarden.chip.ads1220.Ads1220Config;
import rigwarden.chip.ads1220.VoltageReference;
import rigwarden.chip.max31855.Couple;
import rigwarden.chip.max31855.Max31855;
import rigwarden.chip.max31855.Max31855Codec;
import rigwarden.chip.max31856.MainsFilter;
import rigwarden.chip.max31856.Max31856;
import rigwarden.chip.max31856.Max31856Codec;
import rigwarden.chip.max31856.Max31856Config;
import rigwarden.chip.max31856.Max31856State;
import rigwarden.emulated.Ads1220Emulator;
import rigwarden.emulated.Max31855Emulator;
import rigwarden.emulated.Max31856Emulator;
import rigwarden.loop.RealClock;
import rigwarden.pack.Chance;
import rigwarden.warden.Failure;

/** The product's drivers of SPI chips with the emulated ones, on the machine's own clock: 1.65 V at an input, 40 °C. */
final class SpiDriverContract {
    private static final int HERTZ = 1_000_000;
    private static final int MOST_RAISES = 10;
    private static final long RAISE_NANOS = 2_000_000_000L;
    private static final long LONGEST_NANOS = 20_000_000_000L;
    private static final long STEP_NANOS = 20_000_000L;
    private static final double REFERENCE_VOLTS = 2.048;

    private final SpiHeader header;
    private final RealClock clock = new RealClock();

    private SpiDriverContract(SpiHeader header) {
        this.header = header;
    }

    /** What is done with the node. */
    @FunctionalInterface
    private interface Use {
        void on(Context context, SpiNode node) throws Exception;
    }

    /** A chip of mode 0 comes before the sentence that leaves the node in mode 1, in which all others speak. */
    static List<Case> cases(SpiHeader header) {
        SpiDriverContract contract = new SpiDriverContract(header);
        List<Case> cases = new ArrayList<>();
        cases.add(new Case("SPI: the MAX31855 driver reads 40 C", contract::straight));
        cases.add(SpiContract.mode(header));
        cases.add(new Case("SPI: the MAX31856 driver reads 40 C", contract::probe));
        cases.add(new Case("SPI: the ADS1220 driver reads 1.65 V once its ready line has fallen", contract::converter));
        return cases;
    }

    private void on(int mode, Use use) throws Exception {
        Context context = header.open();
        SpiNode node = SpiNode.at(context, 0, 0, mode, HERTZ);
        try {
            use.on(context, node);
        } finally {
            node.close();
            context.shutdown();
        }
    }

    private void straight() throws Exception {
        header.socket().put(new Max31855Emulator(Max31855Emulator.Version.T, new SpiWorld(), Max31855Emulator.Errors.NONE,
                Chance.of(1, "contract", "straight")));
        on(0, (_, node) -> {
            Max31855 driver = new Max31855(node.chip(), Couple.T);
            driver.reference();
            clock.sleepUntil(clock.nanos() + 200_000_000);

            assertThat(driver.read() * Max31855Codec.COLD_CELSIUS_PER_CODE).isCloseTo(40, within(0.3));
        });
    }

    private void probe() throws Exception {
        header.socket().put(new Max31856Emulator(new SpiWorld(), Max31856Emulator.Errors.NONE, Chance.of(1, "contract", "probe")));
        on(1, (_, node) -> {
            Max31856 driver = new Max31856(node.chip(), Max31856Config.cellProbe(MainsFilter.HZ_50, 0), Max31856State.FRESH);
            driver.configure();
            assertThat(catchThrowableOfType(BusFailure.class, driver::read).why()).as("not before it was converted").isEqualTo(Failure.NOT_READY);

            clock.sleepUntil(clock.nanos() + 300_000_000);

            assertThat(driver.read() * Max31856Codec.CELSIUS_PER_CODE).isCloseTo(40, within(0.05));
        });
    }

    private void converter() throws Exception {
        Ads1220Emulator chip = new Ads1220Emulator(new SpiWorld(), Ads1220Emulator.Errors.none(5), Chance.of(1, "contract", "converter"));
        header.socket().put(chip);
        boolean follows = header.ready(chip::readyPinHigh);
        on(1, (context, node) -> {
            ReadyLine ready = ReadyLine.at(context, header.readyLine());
            Ads1220 driver = new Ads1220(node.chip(), ready, clock, new Ads1220Config(VoltageReference.INTERNAL));
            driver.configure();

            start(driver, ready, follows);

            assertThat(finished(driver) * Ads1220Codec.voltsPerCode(REFERENCE_VOLTS)).isCloseTo(1.65, within(0.001));
        });
    }

    /** Where the line does not follow the pin it must still be high when the driver asks for it. */
    private void start(Ads1220 driver, ReadyLine ready, boolean follows) throws BusFailure {
        if (follows) {
            driver.start(2);
            return;
        }
        assertThat(catchThrowableOfType(BusFailure.class, () -> driver.start(2)).why()).as("with its line low").isEqualTo(Failure.NOT_READY);
        for (int raise = 0; raise < MOST_RAISES; raise++) {
            header.raise();
            long end = clock.nanos() + RAISE_NANOS;
            while (ready.isLow() && clock.nanos() < end) {
                clock.sleepUntil(clock.nanos() + STEP_NANOS / 20);
            }
            try {
                driver.start(2);
                return;
            } catch (BusFailure late) {
                assertThat(late.why()).isEqualTo(Failure.NOT_READY);
            }
        }
        throw new AssertionError("its line was never high for long enough");
    }

    private int finished(Ads1220 driver) throws BusFailure {
        for (long end = clock.nanos() + LONGEST_NANOS; ; ) {
            clock.sleepUntil(clock.nanos() + STEP_NANOS);
            try {
                return driver.finish(2);
            } catch (BusFailure e) {
                if (e.why() != Failure.NOT_READY || clock.nanos() > end) {
                    throw e;
                }
            }
        }
    }
}
