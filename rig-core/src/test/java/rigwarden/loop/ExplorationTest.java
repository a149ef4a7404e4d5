package rigwarden.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
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
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;
import rigwarden.warden.Scans;
import rigwarden.warden.Severity;

/** One cell, a programmable source and sink: everything that one letter for each rule's breach and each cut-off can lead to. */
class ExplorationTest {
    private static final long[] GAPS = {100_000_000L, 1_200_000_000L, 7_000_000_000L, 7_500_000_000_000L};
    /** Rules that need a history of their own; LastingBreachTest and ChargeRulesTest walk each. */
    private static final Set<Integer> NEED_HISTORY = Set.of(9, 10, 26, 27, 29, 36, 37);

    private final Rig rig = TestRigs.oneCell();
    private final Map<String, Letter> letters = letters();

    @Test
    void no_path_through_judge_next_and_grant_breaks_a_safety_property() {
        Exploration exploration = new Exploration(rig, new Program("short", false, List.of(
                new Step.Charge(0, 21, 3.60, 5.25),
                new Step.Rest(1_800_000_000_000L, 7_200_000_000_000L),
                new Step.Discharge(1, 10.5, 2.50),
                new Step.Park(0, 21, 0.4, 3.60),
                new Step.ProveStop(0, 5.25, Step.Element.RELAY),
                new Step.ProveStop(1, 5.25, Step.Element.CONTACTOR))), letters, GAPS);

        exploration.walk();

        System.out.println(exploration.counts());
        assertThat(exploration.states.keySet()).as("every state of the machine is visited, but one of switched sources")
                .containsAll(Arrays.stream(RunState.class.getPermittedSubclasses()).map(Class::getSimpleName)
                        .filter(name -> !name.equals("Showing")).toList());
        assertThat(exploration.tripped).as("every rule that trips has tripped").containsAll(tripping(rig, NEED_HISTORY));
        assertThat(exploration.ends).contains(Ended.TAPER, Ended.CEILING, Ended.CUT_OFF, Ended.CHARGE_REACHED, Ended.PROVED, Ended.TIME,
                Ended.TRIPPED, Ended.STOPPED);
    }

    /** Numbers of the rules that trip, but those that need a history of their own. */
    static Set<Integer> tripping(Rig rig, Set<Integer> but) {
        return Rules.of(rig).stream()
                .filter(r -> r.severity() != Severity.WARNS)
                .map(Rule::number)
                .filter(number -> !but.contains(number))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private Map<String, Letter> letters() {
        Map<String, Letter> all = Exploration.people();
        put(all, "feedback closed in silence", s -> s.set(Role.FEEDBACK, 1).set(Role.COIL_FEED, 0));
        put(all, "sink on", s -> s.set(Role.SINK_ON, 1));
        put(all, "bus alive", s -> s.set(Role.BUS_VOLTS, 2.5));
        put(all, "at the ceiling", s -> s.set(Role.CELL_VOLTS, 3.6005).set(Role.PACK_VOLTS, 3.6005));
        put(all, "over the ceiling", s -> s.set(Role.CELL_VOLTS, 3.65).set(Role.PACK_VOLTS, 3.65));
        put(all, "at the cut-off", s -> s.set(Role.CELL_VOLTS, 2.49).set(Role.PACK_VOLTS, 2.49));
        put(all, "cell high", s -> s.set(Role.CELL_VOLTS, 3.72).set(Role.PACK_VOLTS, 3.72));
        put(all, "cell low", s -> s.set(Role.CELL_VOLTS, 2.35).set(Role.PACK_VOLTS, 2.35));
        put(all, "cell very low", s -> s.set(Role.CELL_VOLTS, 1.9).set(Role.PACK_VOLTS, 1.9));
        put(all, "pack against cells", s -> s.set(Role.PACK_VOLTS, 3.6));
        put(all, "half above order", s -> s.set(Role.CURRENT, 27));
        put(all, "far above order", s -> s.set(Role.CURRENT, 60));
        put(all, "charging current", s -> s.set(Role.CURRENT, 21));
        put(all, "discharging current", s -> s.set(Role.CURRENT, -10.5));
        put(all, "no current", s -> s.set(Role.CURRENT, 0));
        put(all, "cell warm", s -> s.set(Role.BODY, 58));
        put(all, "cell warm to charge", s -> s.set(Role.BODY, 41));
        put(all, "cell cold", s -> s.set(Role.BODY, -13));
        put(all, "cell cool", s -> s.set(Role.BODY, 8));
        put(all, "hot joint", s -> s.set(Role.CONTACTOR_BODY, 61));
        put(all, "hot room and joint", s -> s.set(Role.ROOM, 10).set(Role.SHUNT_BODY, 50));
        put(all, "terminal hot", s -> s.set(rig.channels(Role.STUD).getFirst(), 50));
        put(all, "joint probe cold", s -> s.set(Role.BODY, 36).set(Role.STUD, 22));
        put(all, "loop open", s -> s.set(Role.LOOP, 0));
        put(all, "coil dead", s -> s.set(Role.COIL_FEED, 0));
        put(all, "feedback open", s -> s.set(Role.FEEDBACK, 0));
        put(all, "feedback closed", s -> s.set(Role.FEEDBACK, 1));
        put(all, "bus full", s -> s.set(Role.BUS_VOLTS, 3.3));
        put(all, "bus empty", s -> s.set(Role.BUS_VOLTS, 0));
        put(all, "voltage lost on the way", s -> s.set(Role.BUS_VOLTS, 4.09));
        put(all, "path lost", s -> s.set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 1));
        put(all, "source on", s -> s.set(Role.SOURCE_ON, 1));
        put(all, "recorder behind", s -> s.set(Role.RECORDER_LAG, 11));
        put(all, "recorder slow", s -> s.set(Role.RECORDER_LAG, 4));
        put(all, "card full", s -> s.set(Role.FREE_SPACE, 1e6));
        put(all, "late", s -> s.set(Role.LATENESS, 0.5));
        put(all, "wire cut", s -> s.set(Role.CELL_VOLTS, 0));
        Channel body = rig.channel(Role.BODY);
        put(all, "probe open", s -> s.failed(body, Failure.OPEN, 0));
        put(all, "probe stale", s -> s.old(body, 600_000_000L));
        put(all, "source talks nonsense", s -> s.set(Role.SOURCE_VOLTS, 500));
        put(all, "source silent", s -> s.old(rig.channel(Role.SOURCE_AMPS), 2_000_000_000L));
        return all;
    }

    private static void put(Map<String, Letter> all, String name, UnaryOperator<Scans> change) {
        all.put(name, Letter.seen(change));
    }

    /** Kept so that a list of letters never silently shrinks. */
    @Test
    void the_alphabet_has_a_letter_for_every_rule_and_cut_off() {
        assertThat(letters.keySet()).hasSizeGreaterThanOrEqualTo(40);
    }
}
