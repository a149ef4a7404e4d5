package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.bus.ReadyLine;
import rigwarden.bus.SpiNode;
import rigwarden.chip.ads1220.Ads1220;
import rigwarden.chip.ads1220.Ads1220Codec;
import rigwarden.chip.ads1220.Ads1220Config;
import rigwarden.chip.ads1220.VoltageReference;
import rigwarden.chip.ina226.Ina226;
import rigwarden.chip.ina226.Ina226Config;
import rigwarden.chip.max31855.Max31855;
import rigwarden.chip.max31855.Max31855Codec;
import rigwarden.chip.max31856.MainsFilter;
import rigwarden.chip.max31856.Max31856;
import rigwarden.chip.max31856.Max31856Codec;
import rigwarden.chip.max31856.Max31856Config;
import rigwarden.chip.max31856.Max31856State;
import rigwarden.chip.mcp23017.Mcp23017;
import rigwarden.loop.Clock;
import rigwarden.pack.Chance;
import rigwarden.warden.Failure;

/** Drivers of one hand on chips of another, both made from the data sheets alone, over the emulated buses. */
class TwoHandsTest {
    private static final int HERTZ = 1_000_000;
    private static final int READY = 27;
    private static final int AT = 0x40;

    private final EmulatedBoard board = new EmulatedBoard();
    private final SpiBench bench = new SpiBench();
    private final Chance chance = Chance.of(1, "two", "hands");

    @ParameterizedTest
    @EnumSource(rigwarden.chip.max31855.Couple.class)
    void a_MAX31855_of_either_letter_reads_what_its_tip_has_within_its_own_steps(rigwarden.chip.max31855.Couple couple)
            throws BusFailure {
        Couple wire = Couple.valueOf(couple.name());
        Max31855Emulator chip = new Max31855Emulator(Max31855Emulator.Version.valueOf(couple.name()), bench,
                Max31855Emulator.Errors.NONE, chance);
        board.putSpi(0, 0, chip);
        Max31855 driver = new Max31855(SpiNode.at(board.context(), 0, 0, 0, HERTZ).chip(), couple);

        for (double celsius = -20; celsius <= 125; celsius += 7.3) {
            for (double cold : new double[] {-5, 22, 41.3}) {
                bench.coldCelsius = cold;
                bench.tip(wire, celsius);
                bench.pass(0.2);

                // half a step of 0.25 °C as the straight line stretches it, and half a step of the cold junction's
                assertThat(driver.read() * Max31855Codec.COLD_CELSIUS_PER_CODE).as("%s at %s, cold %s", couple, celsius, cold)
                        .isCloseTo(celsius, within(0.25));
            }
        }
    }

    @Test
    void a_MAX31856_gives_each_temperature_once_and_after_a_dip_only_with_its_configuration() throws BusFailure {
        Max31856Emulator chip = new Max31856Emulator(bench, Max31856Emulator.Errors.NONE, chance);
        board.putSpiByLine(0, 4, false, chip);
        Max31856 driver = new Max31856(SpiNode.at(board.context(), 0, 1, 1, HERTZ).chip(board.context(), 4),
                Max31856Config.cellProbe(MainsFilter.HZ_50, 0), Max31856State.FRESH);
        driver.configure();

        for (double celsius = -20; celsius <= 125; celsius += 9.1) {
            bench.tip(Couple.T, celsius);
            bench.pass(0.25);
            assertThat(driver.read() * Max31856Codec.CELSIUS_PER_CODE).isCloseTo(celsius, within(0.03));
            assertThat(catchThrowableOfType(BusFailure.class, driver::read).why()).isEqualTo(Failure.NOT_READY);
        }

        chip.powerOnReset();
        assertThat(catchThrowableOfType(BusFailure.class, driver::read).why()).isEqualTo(Failure.CONFIGURATION_LOST);
        bench.tip(Couple.T, 60);
        bench.pass(0.25);
        assertThat(driver.read() * Max31856Codec.CELSIUS_PER_CODE).isCloseTo(60, within(0.03));
    }

    private Ads1220 converter(Ads1220Emulator chip) throws BusFailure {
        board.putSpi(0, 0, chip).input(READY, chip::readyPinHigh);
        Clock clock = new Clock() {
            @Override
            public long nanos() {
                return bench.nanos;
            }

            @Override
            public void sleepUntil(long until) {
                bench.nanos = Math.max(bench.nanos, until);
            }
        };
        Ads1220 driver = new Ads1220(SpiNode.at(board.context(), 0, 0, 1, HERTZ).chip(), ReadyLine.at(board.context(), READY), clock,
                new Ads1220Config(VoltageReference.EXTERNAL));
        driver.configure();
        return driver;
    }

    private double volts(Ads1220 driver, int input) throws BusFailure {
        driver.start(input);
        bench.nanos += driver.conversionNanos();
        return driver.finish(input) * Ads1220Codec.voltsPerCode(4.096);
    }

    @Test
    void an_ADS1220_converts_each_input_by_itself_with_the_slowest_clock_that_its_sheet_allows() throws BusFailure {
        bench.references[0] = 4.096;
        Ads1220 driver = converter(new Ads1220Emulator(bench, new Ads1220Emulator.Errors(0, 0, 0, -0.02, 5, 0, 50e-6), chance));

        for (int input = 0; input < 4; input++) {
            bench.pins[input] = 0.7 + 1.1 * input;
        }

        for (int input = 0; input < 3; input++) {
            assertThat(volts(driver, input)).isCloseTo(0.7 + 1.1 * input, within(1e-6));
        }
        bench.pins[3] = 3.65;
        assertThat(volts(driver, 3)).isCloseTo(3.65, within(1e-6));
    }

    @Test
    void an_ADS1220_that_lost_its_supply_for_a_moment_converts_slowly_and_is_written_anew() throws BusFailure {
        bench.references[0] = 4.096;
        Ads1220Emulator chip = new Ads1220Emulator(bench, Ads1220Emulator.Errors.none(5), chance);
        Ads1220 driver = converter(chip);
        bench.pins[1] = 3.3;

        chip.powerOnReset();
        bench.pass(0.1);

        assertThat(catchThrowableOfType(BusFailure.class, () -> volts(driver, 1)).why()).isEqualTo(Failure.CONFIGURATION_LOST);
        assertThat(volts(driver, 1)).isCloseTo(3.3, within(1e-6));
    }

    /** What an INA226 has on its pins. */
    private final class Shunt implements Ina226Emulator.Wiring {
        private double busVolts = 11.98;

        @Override
        public long nanos() {
            return bench.nanos;
        }

        @Override
        public double shuntVolts() {
            return 0.020;
        }

        @Override
        public double commonModeVolts() {
            return 0;
        }

        @Override
        public double busVolts() {
            return busVolts;
        }
    }

    @Test
    void an_INA226_gives_the_codes_of_its_worked_example_once_and_nothing_for_ever_after_41_V() throws BusFailure {
        Shunt shunt = new Shunt();
        board.put(1, AT, new Ina226Emulator(shunt, Ina226Emulator.Errors.NONE, chance));
        Ina226 driver = new Ina226(Chip.at(board.context(), 1, AT), Ina226Config.LARGE_CELLS);
        driver.configure();
        assertThat(catchThrowableOfType(BusFailure.class, driver::check).why()).isEqualTo(Failure.NOT_READY);

        bench.pass(0.04);
        driver.check();
        // published (SBOS547, table 1): 20 mV is 1F40h, 11.98 V is 2570h
        assertThat(driver.current()).isEqualTo(0x1F40);
        assertThat(driver.bus()).isEqualTo(0x2570);
        assertThat(catchThrowableOfType(BusFailure.class, driver::check).why()).isEqualTo(Failure.NOT_READY);

        shunt.busVolts = 41;
        assertThat(catchThrowableOfType(BusFailure.class, driver::check).why()).isEqualTo(Failure.NO_ANSWER);
        shunt.busVolts = 11.98;
        bench.pass(1);
        assertThat(catchThrowableOfType(BusFailure.class, driver::configure).why()).isEqualTo(Failure.NO_ANSWER);
    }

    /** Nothing outside an expander but a pull-down at each pin. */
    private static final class Box implements Mcp23017Emulator.Wiring {
        private final boolean[] high = new boolean[16];

        @Override
        public Mcp23017Emulator.Outside outside(int pin) {
            return Mcp23017Emulator.Outside.PULLED_DOWN;
        }

        @Override
        public void driven(int pin, boolean output, boolean up) {
            high[pin] = output && up;
        }
    }

    @Test
    void an_MCP23017_is_configured_from_either_bank_and_drives_the_pin_that_was_meant() throws BusFailure {
        Box box = new Box();
        Mcp23017Emulator chip = new Mcp23017Emulator(box);
        board.put(1, AT, chip);
        chip.written(new byte[] {0x0A, (byte) 0x80}, 0, 2);
        Mcp23017 driver = new Mcp23017(Chip.at(board.context(), 1, AT), 0x0100 | 0x0004, 0);

        driver.configure();
        driver.write(0x0100);

        assertThat(box.high[0]).as("GPA0").isTrue();
        assertThat(box.high[10]).as("GPB2").isFalse();
        assertThat(driver.read()).isEqualTo(0x0100);
        driver.write(0x0004);
        assertThat(box.high[0]).isFalse();
        assertThat(box.high[10]).isTrue();
        assertThat(driver.read()).isEqualTo(0x0004);
    }
}
