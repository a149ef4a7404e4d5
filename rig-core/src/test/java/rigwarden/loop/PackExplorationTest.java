package rigwarden.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import rigwarden.loop.Exploration.Letter;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.run.RunState;
import rigwarden.warden.Failure;
import rigwarden.warden.Scans;

/**
 * Eight cells, a plain charger, a programmable sink, an inverter with a thermostat, and the battery's own protection: one
 * letter for each rule's breach, and one for each way in which such devices end a step by themselves.
 */
class PackExplorationTest {
    private static final long[] GAPS = {100_000_000L, 1_200_000_000L, 7_500_000_000_000L};
    private static final int CHARGER = 0;
    private static final int SINK = 1;
    private static final int INVERTER = 2;
    /** Rules that need a history of their own; LastingBreachTest, PackBreachTest and ChargeRulesTest walk each. */
    private static final Set<Integer> NEED_HISTORY = Set.of(9, 10, 26, 27, 29, 36, 37);

    private final Rig rig = TestRigs.eightCells();
    private final Map<String, Letter> letters = letters();

    @Test
    void no_path_through_judge_next_and_grant_breaks_a_safety_property() {
        Exploration exploration = new Exploration(rig, new Program("short", false, List.of(
                new Step.Charge(CHARGER, 21, 3.60, 3),
                new Step.Rest(1_800_000_000_000L, 7_200_000_000_000L),
                new Step.Discharge(SINK, 10.5, 2.50),
                new Step.HeatRun(INVERTER, rig.devices().get(INVERTER).maxAmps(), 2.50, 10_000_000_000_000L),
                new Step.Park(CHARGER, 21, 0.4, 3.60),
                new Step.ProveStop(INVERTER, 10.5, Step.Element.RELAY),
                new Step.ProveStop(SINK, 5.25, Step.Element.CONTACTOR))), letters, GAPS);

        exploration.walk();

        System.out.println(exploration.counts());
        assertThat(exploration.states.keySet()).as("every state of the machine is visited")
                .containsAll(Arrays.stream(RunState.class.getPermittedSubclasses()).map(Class::getSimpleName).toList());
        assertThat(exploration.tripped).as("every rule that trips has tripped")
                .containsAll(ExplorationTest.tripping(rig, NEED_HISTORY));
        assertThat(exploration.ends).as("every end of a step is met, but those that take a history or an interruption; MachineTest and ContinuedMachineTest have them")
                .containsExactlyInAnyOrderElementsOf(EnumSet.complementOf(EnumSet.of(Ended.SETTLED, Ended.NEVER_FIT,
                        Ended.NOT_CONTINUED, Ended.CUT)));
    }

    private Channel column(String name) {
        return rig.column(name).orElseThrow();
    }

    private static Scans cells(Scans scans, double volts) {
        return scans.set(Role.CELL_VOLTS, volts).set(Role.PACK_VOLTS, 8 * volts);
    }

    /** One cell at a voltage of its own, the others alike. */
    private Scans one(Scans scans, double volts, double others) {
        return scans.set(Role.CELL_VOLTS, others).set(column("cell_05_v"), volts).set(Role.PACK_VOLTS, 7 * others + volts);
    }

    private Map<String, Letter> letters() {
        Map<String, Letter> all = Exploration.people();
        put(all, "sink talks nonsense", s -> s.set(Role.SINK_VOLTS, 500));
        put(all, "highest cell at the ceiling", s -> one(s, 3.601, 3.45));
        put(all, "tapered near the ceiling", s -> cells(s, 3.58).set(Role.CURRENT, 2.5));
        put(all, "lowest cell at the cut-off", s -> one(s, 2.49, 3.1));
        put(all, "near the protection's upper edge", s -> one(s, 3.59, 3.40));
        put(all, "near the protection's lower edge", s -> one(s, 2.52, 3.0));
        put(all, "protection open above", s -> one(s, 3.59, 3.40).set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 28.8));
        put(all, "protection open below", s -> one(s, 2.52, 3.0).set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 12));
        put(all, "device has ended or pauses", s -> s.set(Role.CURRENT, 0));
        put(all, "inverter has quit", s -> cells(s, 2.7).set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 21.6));
        put(all, "path lost", s -> s.set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 15));
        put(all, "cell high", s -> one(s, 3.72, 3.5));
        put(all, "cell low", s -> one(s, 2.35, 3.0));
        put(all, "cell very low", s -> one(s, 1.9, 3.0));
        put(all, "pack against cells", s -> s.set(Role.PACK_VOLTS, 27.5));
        put(all, "tap off", s -> s.set(column("cell_03_v"), 3.25).set(column("cell_04_v"), 3.35));
        put(all, "joint stepped", s -> one(s, 3.25, 3.3));
        put(all, "above the charger's order", s -> s.set(Role.CURRENT, 27));
        put(all, "far above the charger's order", s -> s.set(Role.CURRENT, 60));
        put(all, "far above the inverter's order", s -> s.set(Role.CURRENT, -125));
        put(all, "charging current", s -> s.set(Role.CURRENT, 21));
        put(all, "discharging current", s -> s.set(Role.CURRENT, -79));
        put(all, "voltage lost on the way", s -> s.set(Role.CELL_VOLTS, 3.2).set(Role.PACK_VOLTS, 25.6).set(Role.BUS_VOLTS, 24.6));
        put(all, "charger too high", s -> s.set(Role.BUS_VOLTS, 29.6));
        put(all, "charger alive", s -> s.set(Role.BUS_VOLTS, 28.8));
        put(all, "bus full", s -> s.set(Role.BUS_VOLTS, 26.4));
        put(all, "bus empty", s -> s.set(Role.BUS_VOLTS, 0));
        put(all, "cell warm", s -> s.set(column("cell_05_c"), 58));
        put(all, "cell warm to charge", s -> s.set(Role.BODY, 41));
        put(all, "cell cold", s -> s.set(column("cell_05_c"), -13));
        put(all, "cell cool", s -> s.set(column("cell_05_c"), 10.5));
        put(all, "hot contactor", s -> s.set(Role.CONTACTOR_BODY, 61));
        put(all, "hot over the room", s -> s.set(Role.ROOM, 10).set(Role.SHUNT_BODY, 50));
        put(all, "bar over its cell", s -> s.set(column("bar_03_c"), 43));
        put(all, "bar over its likes", s -> s.set(column("bar_03_c"), 31));
        put(all, "joint probe cold", s -> s.set(column("cell_03_c"), 36));
        put(all, "loop open", s -> s.set(Role.LOOP, 0));
        put(all, "coil dead", s -> s.set(Role.COIL_FEED, 0));
        put(all, "feedback open", s -> s.set(Role.FEEDBACK, 0));
        put(all, "feedback closed", s -> s.set(Role.FEEDBACK, 1));
        put(all, "feedback closed in silence", s -> s.set(Role.FEEDBACK, 1).set(Role.COIL_FEED, 0));
        put(all, "sink on", s -> s.set(Role.SINK_ON, 1));
        put(all, "sink silent", s -> s.old(rig.channel(Role.SINK_AMPS), 2_000_000_000L));
        put(all, "recorder behind", s -> s.set(Role.RECORDER_LAG, 11));
        put(all, "card full", s -> s.set(Role.FREE_SPACE, 1e6));
        put(all, "late", s -> s.set(Role.LATENESS, 0.5));
        put(all, "wire cut", s -> s.set(column("cell_05_v"), 0));
        put(all, "current not seen", s -> s.failed(column("current_a"), Failure.NO_ANSWER, s.nanos()));
        put(all, "bus not seen", s -> s.failed(column("bus_v"), Failure.NO_ANSWER, s.nanos()));
        put(all, "one cell not seen", s -> s.failed(column("cell_05_v"), Failure.NO_ANSWER, s.nanos()));
        put(all, "probe open", s -> s.failed(column("cell_05_c"), Failure.OPEN, 0));
        put(all, "probe stale", s -> s.old(column("cell_05_c"), 600_000_000L));
        return all;
    }

    private static void put(Map<String, Letter> all, String name, UnaryOperator<Scans> change) {
        all.put(name, Letter.seen(change));
    }
}
