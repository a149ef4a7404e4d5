package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static rigwarden.kernel.DriverWorld.AMPS;
import static rigwarden.kernel.DriverWorld.CELSIUS;
import static rigwarden.kernel.DriverWorld.OHMS;
import static rigwarden.kernel.DriverWorld.VOLTS;

import com.pi4j.context.Context;
import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.chip.ads1115.Ads1115;
import rigwarden.chip.ads1115.Ads1115Config;
import rigwarden.chip.ina226.Ina226;
import rigwarden.chip.ina226.Ina226Codec;
import rigwarden.chip.ina226.Ina226Config;
import rigwarden.chip.ina228.AdcRange;
import rigwarden.chip.ina228.Ina228;
import rigwarden.chip.ina228.Ina228Codec;
import rigwarden.chip.ina228.Ina228Config;
import rigwarden.chip.mcp23017.Mcp23017;
import rigwarden.chip.mcp23017.Mcp23017Codec;
import rigwarden.chip.mcp9601.Mcp9601;
import rigwarden.chip.mcp9601.Mcp9601Codec;
import rigwarden.chip.mcp9601.Mcp9601Config;
import rigwarden.emulated.I2cTarget;
import rigwarden.emulated.Mcp23017Emulator;
import rigwarden.loop.RealClock;
import rigwarden.warden.Failure;

/** The product's drivers with the emulated chips, on the machine's own clock: 100 A, 3.3 V, 40 °C. */
final class DriverContract {
    private static final long LONGEST_NANOS = 20_000_000_000L;
    private static final long STEP_NANOS = 20_000_000L;

    /** A reading that may not be ready yet. */
    @FunctionalInterface
    private interface Taken {
        long now() throws BusFailure;
    }

    /** What is done with one chip. */
    @FunctionalInterface
    private interface Use {
        void on(Chip chip) throws Exception;
    }

    private final Header header;
    private final RealClock clock = new RealClock();

    private DriverContract(Header header) {
        this.header = header;
    }

    static List<Case> cases(Header header) {
        DriverContract contract = new DriverContract(header);
        return List.of(
                new Case("the INA228 driver reads 100 A", contract::shunt),
                new Case("the INA226 driver reads 100 A", contract::plainShunt),
                new Case("the ADS1115 driver reads 3.3 V", contract::tap),
                new Case("the MCP9601 driver reads 40 C", contract::probe),
                new Case("the MCP23017 driver sets its outputs and reads its inputs", contract::expander),
                new Case("a chip of another kind is refused", contract::another));
    }

    private void with(int address, I2cTarget emulator, Use use) throws Exception {
        header.put(address, emulator);
        Context context = header.open();
        try {
            use.on(Chip.at(context, Header.BUS, address));
        } finally {
            context.shutdown();
        }
    }

    private void shunt() throws Exception {
        with(0x40, DriverWorld.ina228(), chip -> {
            Ina228Codec codec = new Ina228Codec(327.68, OHMS, AdcRange.WIDE);
            Ina228 ina = Ina228.started(chip, clock, Ina228Config.LARGE_CELLS, codec);

            long code = ready(() -> {
                ina.check();
                return ina.current();
            });

            assertThat(code * codec.ampsPerCode()).isCloseTo(AMPS, within(0.01));
            assertThat(ina.bus() * 195.3125e-6).isCloseTo(VOLTS, within(0.001));
        });
    }

    private void plainShunt() throws Exception {
        with(0x41, DriverWorld.ina226(), chip -> {
            Ina226 ina = new Ina226(chip, Ina226Config.LARGE_CELLS);
            ina.configure();

            long code = ready(() -> {
                ina.check();
                return ina.current();
            });

            assertThat(code * Ina226Codec.SHUNT_VOLTS / OHMS).isCloseTo(AMPS, within(0.01));
            assertThat(ina.bus() * Ina226Codec.BUS_VOLTS).isCloseTo(VOLTS, within(0.001));
        });
    }

    private void expander() throws Exception {
        int held = 9;
        int outputs = Mcp23017Codec.bit(0) | Mcp23017Codec.bit(1) | Mcp23017Codec.bit(2);
        int high = Mcp23017Codec.bit(0) | Mcp23017Codec.bit(2);
        int seen = outputs | Mcp23017Codec.bit(held);
        DriverWorld.Pins pins = new DriverWorld.Pins(held);
        with(0x20, new Mcp23017Emulator(pins), chip -> {
            Mcp23017 mcp = new Mcp23017(chip, outputs, 0);
            mcp.configure();
            assertThat(mcp.read() & seen).as("nothing driven, one input held high").isEqualTo(Mcp23017Codec.bit(held));

            mcp.write(high);

            assertThat(mcp.read() & seen).isEqualTo(high | Mcp23017Codec.bit(held));
            assertThat(pins.driven()).as("GPA0 and GPA2").isEqualTo(0b101);
        });
    }

    private void tap() throws Exception {
        with(0x48, DriverWorld.ads1115(), chip -> {
            Ads1115 ads = new Ads1115(chip, Ads1115Config.CELL_TAPS);
            ads.configure();
            ads.start(2);

            long code = ready(() -> ads.finish(2));

            assertThat(code * 4.096 / 32768).isCloseTo(VOLTS, within(0.001));
        });
    }

    private void probe() throws Exception {
        with(0x60, DriverWorld.mcp9601(), chip -> {
            Mcp9601 mcp = new Mcp9601(chip, Mcp9601Config.CELL_PROBE);
            mcp.configure();

            long code = ready(mcp::read);

            assertThat(code * Mcp9601Codec.CELSIUS_PER_CODE).isCloseTo(CELSIUS, within(0.3));
        });
    }

    private void another() throws Exception {
        with(0x40, DriverWorld.mcp9601(), chip -> {
            BusFailure failure = catchThrowableOfType(BusFailure.class,
                    () -> Ina228.started(chip, clock, Ina228Config.LARGE_CELLS, new Ina228Codec(327.68, OHMS, AdcRange.WIDE)));

            assertThat(failure.why()).isIn(Failure.NONSENSE, Failure.NO_ANSWER);
        });
    }

    private long ready(Taken taken) throws BusFailure {
        for (long end = clock.nanos() + LONGEST_NANOS; ; ) {
            try {
                return taken.now();
            } catch (BusFailure e) {
                if (e.why() != Failure.NOT_READY || clock.nanos() > end) {
                    throw e;
                }
                clock.sleepUntil(clock.nanos() + STEP_NANOS);
            }
        }
    }
}
