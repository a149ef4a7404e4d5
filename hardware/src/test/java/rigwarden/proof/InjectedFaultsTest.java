package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.BoardFault.InWorld;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.pack.Threshold;
import rigwarden.pack.World;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rigfile.Limits;
import rigwarden.run.Event;
import rigwarden.warden.Guard;
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;
import rigwarden.warden.Trip;

/**
 * Faults put into the model, not into the readings: the judge is the model's own current. For each, it must be zero within
 * the time that {@code limits} promises for the rule that named it, counted from the instant at which the truth went wrong.
 */
class InjectedFaultsTest {
    private static final double NANO = 1e-9;
    private static final Rig RIG = Bench.rig();
    private static Rehearsal charging;
    private static Rehearsal tapering;
    private static Rehearsal discharging;

    @BeforeAll
    static void bring_one_night_to_the_instants_from_which_the_cases_fork() {
        Rehearsal night = Bench.rehearsal(7);
        Bench.until(night, () -> Bench.flowing(night, 1));
        Bench.seconds(night, 60);
        charging = night.copy(Bench.NOWHERE);
        Bench.until(night, () -> night.rig().world().amps() < 15 && night.rig().world().amps() > 5);
        tapering = night.copy(Bench.NOWHERE);
        Bench.until(night, () -> Bench.flowing(night, 3));
        Bench.seconds(night, 15);
        discharging = night.copy(Bench.NOWHERE);
    }

    /** Seconds count from where the truth went wrong; a truth that never crossed its limit has {@code crossed} false. */
    private record Outcome(Trip trip, boolean crossed, double secondsToZero, World world, Rehearsal rehearsal) {}

    /** Runs on until the trip and two seconds more. */
    private static Outcome after(Rehearsal from, BoardFault fault, Threshold truth) {
        Rehearsal rehearsal = from.copy(Bench.NOWHERE);
        World world = rehearsal.rig().world();
        rehearsal.rig().catchUp();
        world.resetOracle();
        world.watch(truth);
        long inflicted = world.nanos();
        rehearsal.inflict(fault);
        Optional<Trip> trip = Optional.empty();
        for (int scan = 0; scan < 36_000 && trip.isEmpty(); scan++) {
            for (Event event : rehearsal.scan()) {
                if (event instanceof Event.Tripped tripped) {
                    trip = Optional.of(tripped.first());
                }
            }
        }
        assertThat(trip).as("a trip within a virtual hour").isPresent();
        Bench.seconds(rehearsal, 2);
        assertThat(Math.abs(world.amps())).as("the true current, two seconds later").isLessThan(0.2);
        long last = world.oracle().lastAmpsNanos().orElse(inflicted);
        long wrong = truth.equals(NEVER) ? inflicted : world.oracle().crossedNanos(truth).orElse(last);
        double toZero = Math.max(0, (last - wrong) * NANO);
        System.out.printf("%-34s rule %-28s true current zero %6.3f s after the truth went wrong; highest cell %.4f V, "
                + "hottest %.2f °C at %s%n", fault, trip.get().rule(), toZero, world.oracle().highestCellVolts(),
                world.oracle().hottestCelsius(), world.oracle().hottestNode());
        boolean crossed = truth.equals(NEVER) || world.oracle().crossedNanos(truth).isPresent();
        return new Outcome(trip.get(), crossed, toZero, world, rehearsal);
    }

    private static void kept(Outcome outcome, Integer... rules) {
        assertThat(outcome.trip().rule().number()).as("the rule that names it").isIn((Object[]) rules);
        assertThat(outcome.secondsToZero())
                .as("within what limits promises for %s", outcome.trip().rule())
                .isLessThanOrEqualTo(Limits.reactionSeconds(RIG, outcome.trip().rule()));
    }

    private static final Threshold NEVER = new Threshold.CellAbove(10);

    @Test
    void a_cell_that_heats_by_ten_kelvin_a_minute_is_cut_off() {
        Outcome outcome = after(discharging, new InWorld(new Fault.HeatRate(0, 10)), new Threshold.NodeAbove(55));

        kept(outcome, 21);
        neitherLateNorEarly(outcome);
    }

    /** The limit holds for the true value, so a trip comes before it, by no more than twice the probe's uncertainty. */
    private static void neitherLateNorEarly(Outcome outcome) {
        double u = RIG.channel(Role.BODY).offsetU();
        assertThat(outcome.world().oracle().hottestCelsius()).isBetween(55 - 2 * u - 0.5, 55 + 10.0 / 60 * 9.38);
    }

    /** With 52 A a joint of 0.1 ohm heats its lug by several kelvin a second, long before a bead follows; the bus shows it within a scan. */
    @Test
    void a_joint_that_comes_off_at_a_high_rate_is_cut_off_by_the_voltage_that_it_takes_long_before_it_is_hot() {
        for (Step high : List.of(new Step.Charge(0, 52.5, 3.6, 5.25), new Step.Discharge(1, 52.5, 2.5))) {
            for (boolean positive : new boolean[] {true, false}) {
                Rehearsal rehearsal = Bench.rehearsal(7, new Program("a high rate at once", false, List.of(high)));
                Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 1));
                Bench.seconds(rehearsal, 20);
                Outcome outcome = after(rehearsal, new InWorld(new Fault.LooseJoint(0, positive, 0.1)), NEVER);

                kept(outcome, 57);
                assertThat(outcome.world().oracle().hottestCelsius()).isLessThan(40);
            }
        }
    }

    /** Specimens differ in their probes' errors: those that read low are the ones that put the promise to the test. */
    @Test
    void over_forty_specimens_the_truth_is_never_over_its_limit_for_longer_than_promised() {
        Program discharge = new Program("discharge at once", false, List.of(new Step.Discharge(1, 10.5, 2.5)));
        int crossed = 0;
        double longest = 0;
        double hottest = 0;
        for (long seed = 1; seed <= 40; seed++) {
            Rehearsal rehearsal = Bench.rehearsal(seed, discharge);
            Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 1));
            Outcome outcome = after(rehearsal, new InWorld(new Fault.HeatRate(0, 10)), new Threshold.NodeAbove(55));
            kept(outcome, 21);
            crossed += outcome.crossed() ? 1 : 0;
            longest = Math.max(longest, outcome.secondsToZero());
            hottest = Math.max(hottest, outcome.world().oracle().hottestCelsius());
        }
        System.out.printf("40 specimens heating by 10 K/min, %d over the limit before they are off: longest over 55 °C with current %.2f s, hottest %.2f °C%n",
                crossed, longest, hottest);
        assertThat(crossed).as("specimens that read low enough to be late at all").isGreaterThan(5);
    }

    @Test
    void a_source_that_no_longer_obeys_while_it_answers_is_cut_off_before_the_cell_is_harmed() {
        Outcome outcome = after(tapering, new InWorld(new Fault.SourceDeaf(0)), new Threshold.CellAbove(3.70));

        assertThat(outcome.trip().rule().number()).isIn(1, 11, 12);
        assertThat(outcome.crossed()).as("the truth never went over 3.70 V").isFalse();
    }

    @Test
    void a_cell_that_heats_slowly_is_cut_off_by_its_temperature_and_no_other_rule() {
        Outcome outcome = after(discharging, new InWorld(new Fault.HeatRate(0, 1.5)), new Threshold.NodeAbove(55));

        kept(outcome, 21);
        neitherLateNorEarly(outcome);
    }

    @Test
    void a_source_that_runs_away_never_brings_the_cell_past_its_limit() {
        Outcome outcome = after(tapering, new InWorld(new Fault.SourceRunaway(0, 0.3)), new Threshold.CellAbove(3.70));

        assertThat(outcome.trip().rule().number()).isIn(1, 11, 12);
        assertThat(outcome.crossed()).as("the truth never went over 3.70 V").isFalse();
        assertThat(outcome.world().oracle().highestCellVolts()).as("the fault was real").isGreaterThan(3.60);
    }

    @Test
    void an_open_probe_is_cut_off() {
        Outcome outcome = after(charging, new BoardFault.OpenProbe(probe(Role.BODY)), NEVER);

        kept(outcome, 31);
        assertThat(outcome.trip().where().role()).isEqualTo(Role.BODY);
    }

    @Test
    void a_cut_tap_wire_is_cut_off_and_named_as_a_channel_not_as_an_empty_cell() {
        Outcome outcome = after(discharging, new InWorld(new Fault.BrokenTap(1)), NEVER);

        kept(outcome, 33);
        assertThat(outcome.trip().where().role()).isEqualTo(Role.CELL_VOLTS);
    }

    @Test
    void a_source_that_falls_silent_and_keeps_its_output_is_cut_off() {
        Outcome outcome = after(charging, new BoardFault.SilentDevice(0), NEVER);

        kept(outcome, 34);
        assertThat(outcome.world().sourceOn(0)).as("the source still means to deliver").isTrue();
    }

    @Test
    void a_heartbeat_line_stuck_at_either_level_lets_the_coil_go_by_hardware() {
        double promised = RIG.guards().heartbeatLongest() + RIG.guards().contactLagSeconds() + 2 * RIG.scanNanos() * NANO;
        for (boolean level : List.of(true, false)) {
            Outcome outcome = after(charging, new InWorld(new Fault.StuckHeartbeat(level)), NEVER);

            assertThat(outcome.trip().rule().number()).isIn(42, 43, 13);
            assertThat(outcome.secondsToZero()).isLessThanOrEqualTo(promised);
        }
    }

    @Test
    void a_welded_contactor_with_the_source_on_is_stopped_by_the_second_way_and_named() {
        Rehearsal rehearsal = charging.copy(Bench.NOWHERE);
        World world = rehearsal.rig().world();
        rehearsal.inflict(new InWorld(new Fault.Weld(Line.CONTACTOR)));
        Bench.seconds(rehearsal, 1);
        world.resetOracle();
        long stopped = world.nanos();
        rehearsal.stop();
        List<Integer> told = new ArrayList<>();
        for (int scan = 0; scan < 20; scan++) {
            for (Event event : rehearsal.scan()) {
                if (event instanceof Event.Tripped tripped) {
                    told.add(tripped.first().rule().number());
                }
            }
        }

        OptionalLong last = world.oracle().lastAmpsNanos();
        assertThat(last).as("current flowed when STOP was pressed").isPresent();
        double toZero = (last.getAsLong() - stopped) * NANO;
        System.out.printf("weld, then STOP: true current zero after %.3f s by the second way; contactor still %s%n", toZero,
                world.feedback() ? "closed" : "open");
        assertThat(toZero).isLessThanOrEqualTo(RIG.scanNanos() * NANO * 2 + RIG.guards().contactLagSeconds() + 0.2);
        assertThat(world.feedback()).as("the weld holds").isTrue();
        assertThat(told).as("a person is told").contains(45);
        assertThat(rehearsal.loop().standing().guard()).isInstanceOf(Guard.Tripped.class);
    }

    @Test
    void a_copy_of_the_world_without_beats_has_the_coil_dead_within_one_second() {
        World world = charging.copy(Bench.NOWHERE).rig().world().copy();
        long since = world.nanos();
        assertThat(world.feedback()).isTrue();

        world.advanceTo(since + 1_000_000_000L);

        assertThat(world.coilFeed()).isFalse();
        assertThat(world.feedback()).isFalse();
    }

    /** Written by hand for the reference rig: must-last + at most three scans + the bead's 8 s + 0.2 s. */
    @Test
    void what_limits_promises_is_no_more_than_the_time_written_here() {
        Map<Integer, Double> allowed = Map.ofEntries(Map.entry(1, 0.8), Map.entry(2, 0.8), Map.entry(3, 0.8),
                Map.entry(4, 2.5), Map.entry(11, 3.5), Map.entry(12, 0.7), Map.entry(13, 1.0), Map.entry(14, 0.8),
                Map.entry(21, 9.5), Map.entry(22, 9.5), Map.entry(23, 9.5), Map.entry(24, 9.5), Map.entry(25, 9.5),
                Map.entry(31, 1.0), Map.entry(32, 1.0), Map.entry(33, 0.7), Map.entry(41, 0.5), Map.entry(42, 0.6),
                Map.entry(43, 0.6), Map.entry(45, 0.6), Map.entry(48, 0.5), Map.entry(51, 0.5));
        for (Rule rule : Rules.of(RIG)) {
            if (allowed.containsKey(rule.number())) {
                assertThat(Limits.reactionSeconds(RIG, rule)).as("%s", rule)
                        .isLessThanOrEqualTo(allowed.get(rule.number()) + 1e-9);
            }
        }
    }

    private static int probe(Role role) {
        for (int i = 0; i < RIG.probes().size(); i++) {
            if (RIG.probes().get(i).place() == role) {
                return i;
            }
        }
        throw new AssertionError(role);
    }
}
