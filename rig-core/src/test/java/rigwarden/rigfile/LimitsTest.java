package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rigwarden.program.Program;
import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;
import rigwarden.warden.Way;

class LimitsTest {
    /** These wait for periods that went by, or read instruments and probes that are polled more slowly than a scan. */
    private static final Set<Integer> WAITS_FOR_SILENCE = Set.of(31, 32, 34, 56);

    private final Rig rig = Reference.rig().value();
    private final Limits limits = Limits.of(rig);

    /** Seconds over which a check itself looks back: rises over 30 and 120 s, a channel that fails one time in three. */
    private static final Map<Integer, Double> LOOKS_BACK =
            Map.of(8, 1800.0, 10, 60.0, 26, 30.0, 27, 120.0, 29, 1800.0, 36, 9.0, 37, 1200.0);

    @Test
    void the_cells_govern_the_charge_and_the_fuse_the_discharge() {
        assertThat(limits.governing()).containsExactly(new Governing(Way.CHARGE, "source", "cell", 52.5),
                new Governing(Way.DISCHARGE, "sink", "fuse", 100));
    }

    @Test
    void a_smaller_source_governs_the_charge() {
        Rig small = Reference.sound(Reference.rig("max_a = 60", "max_a = 40")).value();

        assertThat(Governing.of(small, small.devices().getFirst())).isEqualTo(new Governing(Way.CHARGE, "source", "source", 40));
    }

    @Test
    void a_cell_high_is_open_within_its_hold_and_three_scans_and_the_contact() {
        assertThat(Limits.reactionSeconds(rig, rule(1))).isCloseTo(0.3 + 0.1 + 0.1 + 0.1 + 0.03 + 0.05, within(1e-9));
    }

    @Test
    void a_hot_terminal_waits_for_its_bead() {
        assertThat(Limits.reactionSeconds(rig, rule(23))).isCloseTo(1 + 0.2 + 0.1 + 8 + 0.03 + 0.05, within(1e-9));
    }

    @Test
    void a_silent_instrument_is_noticed_after_two_and_a_half_polls() {
        assertThat(Limits.reactionSeconds(rig, rule(34))).isCloseTo(1.25 + 0.5 + 0.1 + 0.03 + 0.05, within(1e-9));
    }

    @Test
    void every_rule_that_reads_fast_channels_keeps_the_promise() {
        int judged = 0;
        double scan = rig.scanNanos() * 1e-9;
        for (Rule rule : Rules.of(rig)) {
            List<Channel> read = rig.channels().stream().filter(c -> rule.reads().contains(c.role())).toList();
            boolean fast = read.stream().allMatch(c -> c.periodNanos() <= 2 * rig.scanNanos());
            if (fast && !WAITS_FOR_SILENCE.contains(rule.number())) {
                boolean warmth = read.stream().allMatch(c -> c.quantity() == Quantity.TEMPERATURE);
                double bead = warmth ? read.stream().mapToDouble(Channel::lagSeconds).max().orElse(0) : 0;
                assertThat(Limits.reactionSeconds(rig, rule)).as(rule.toString())
                        .isGreaterThan(rule.holdNanos() * 1e-9)
                        .isLessThanOrEqualTo(rule.holdNanos() * 1e-9 + 3 * scan + bead + 0.2
                                + LOOKS_BACK.getOrDefault(rule.number(), 0.0));
                judged++;
            }
        }
        assertThat(judged).isEqualTo(Rules.of(rig).size() - WAITS_FOR_SILENCE.size() - 2);
    }

    @Test
    void slower_scans_and_slower_contacts_make_every_reaction_slower() {
        Rig slow = Reference.sound(Reference.rig("scan_ms = 100", "scan_ms = 110", "period_ms = 100", "period_ms = 110",
                "period_ms = 100", "period_ms = 110", "contact_lag_s = 0.03", "contact_lag_s = 0.05")).value();

        for (Rule rule : Rules.of(rig)) {
            assertThat(Limits.reactionSeconds(slow, rule)).as(rule.toString())
                    .isGreaterThanOrEqualTo(Limits.reactionSeconds(rig, rule) + 0.03 - 1e-9);
        }
    }

    @Test
    void transfers_take_their_clocks_on_the_wire() {
        // UM10204 (published, 3.1.10): start, address, pointer, repeated start, address, two bytes, stop.
        assertThat(WireTime.readBits(2)).isEqualTo(1 + 9 + 9 + 1 + 9 + 18 + 1);
        assertThat(WireTime.writeBits(1)).isEqualTo(1 + 9 + 9 + 9 + 1);
    }

    @Test
    void a_scan_of_the_bench_fits_on_its_wires() {
        assertThat(limits.wires()).extracting(WireTime::bus).containsExactly(1, 3);
        WireTime fast = limits.wires().getFirst();
        WireTime slow = limits.wires().getLast();

        assertThat(fast.bits()).isEqualTo(285 + 3 * 48 + 2 * 134 + 48);
        assertThat(fast.seconds()).isCloseTo(745 / 400e3 + 2 * 0.0044, within(1e-9));
        assertThat(slow.bits()).isEqualTo(6 * (155 + 39 + 48));
        assertThat(slow.share()).isCloseTo(0.1452, within(1e-9));
        assertThat(limits.wires()).allSatisfy(w -> assertThat(w.share()).isLessThan(Envelope.WIRE_TIME_SHARE));
    }

    @Test
    void a_scan_of_the_bench_on_spi_fits_on_its_wires_too() {
        List<WireTime> wires = Limits.of(Reference.sound(Reference.spi()).value()).wires();
        WireTime i2c = wires.getFirst();
        WireTime spi = wires.getLast();

        // eight reads of the INA226; three of four bytes of the expander, one register of it read, written and read, and its
        // five outputs written and read back twice
        assertThat(i2c.bits()).isEqualTo(8 * 48 + 3 * 66 + 38 + 2 * 48 + 5 * (38 + 2 * 48));
        // no acknowledge on SPI: eight clocks a byte; six MAX31856 and two inputs of an ADS1220 at 330 samples a second
        assertThat(spi.bits()).isEqualTo(8 * (6 * 42 + 2 * 12));
        assertThat(spi.seconds()).isCloseTo(2208 / 1e6 + 2 * 1.1 / 330, within(1e-9));
        assertThat(wires).allSatisfy(w -> assertThat(w.share()).isLessThan(Envelope.WIRE_TIME_SHARE));
        assertThat(Limits.of(Reference.sound(Reference.spi()).value()).lines())
                .anyMatch(line -> line.startsWith("SPI bus 0 at 1000 kHz: 8.9 ms of wire time"));
    }

    @Test
    void an_uncalibrated_tap_says_what_calibrating_gives_back() {
        TapLimit tap = limits.taps().getFirst();
        double chip = 2 / Math.sqrt(3) * Math.hypot(0.0015 * 3.65, 3 * 125e-6);

        assertThat(tap.uncertaintyVolts()).isCloseTo(chip, within(1e-9));
        assertThat(tap.givesBackVolts()).isCloseTo(chip - Math.hypot(0.0002 * 3.65, 0.0005), within(1e-9));
        Rig calibrated = Reference.sound(Reference.rig("# calibration", "calibration")).value();
        assertThat(Limits.of(calibrated).taps().getFirst().givesBackVolts()).isCloseTo(0, within(1e-9));
    }

    @Test
    void the_envelope_is_printed_as_readings_of_this_rig() {
        Allowed high = limits.envelope().getFirst();

        assertThat(high.programme()).isEqualTo("set up to 3.64366 V");
        assertThat(high.trips()).isEqualTo("from 3.69366 V");
        assertThat(high.mustLast()).isCloseTo(0.3, within(1e-9));
        assertThat(limits.envelope()).anySatisfy(row -> {
            assertThat(row.quantity()).isEqualTo("terminal, shunt, contactor");
            assertThat(row.trips()).isEqualTo("above 58.2 °C");
        });
    }

    @Test
    void the_page_of_text_names_every_rule_every_bus_and_every_step() {
        Program night = Reference.sound(ProgramFile.read(Reference.NIGHT, Reference.rig())).value();
        List<String> lines = Limits.of(rig, night).lines();

        for (Rule rule : Rules.of(rig)) {
            assertThat(lines).anyMatch(line -> line.contains(" " + rule.number() + "  " + rule.name() + " "));
        }
        assertThat(lines).contains("The charge current through source is governed by cell: 52.5 A.",
                "The discharge current through sink is governed by fuse: 100 A.",
                "Bus 3 at 100 kHz: 14.5 ms of wire time in the fullest scan, 14.5 % of it (at most 60 %).",
                "  7  discharge 52.5 A through sink of 100 A (fuse) to 2.5 V");
        assertThat(lines).filteredOn(line -> line.startsWith("  9  park 21 A through source of 52.5 A (cell) to 40 %")).hasSize(1);
        assertThat(limits.lines()).doesNotContain("  7  discharge 52.5 A through sink of 100 A (fuse) to 2.5 V");
        assertThat(rig.channels(Role.CELL_VOLTS)).hasSize(1);
    }

    private Rule rule(int number) {
        return Rules.of(rig).stream().filter(rule -> rule.number() == number).findFirst().orElseThrow();
    }
}
