package rigwarden.loop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.run.Next;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.warden.Failure;
import rigwarden.warden.Granted;
import rigwarden.warden.Guard;
import rigwarden.warden.Inbox;
import rigwarden.warden.Judged;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Request;
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;
import rigwarden.warden.Scan;
import rigwarden.warden.Scans;
import rigwarden.warden.Severity;
import rigwarden.warden.Verdict;
import rigwarden.warden.Warden;

/**
 * Walks the real judge, next and grant from the first scan through everything that an alphabet of scans can do to them:
 * one letter for each rule's breach and each cut-off, in each spacing of time. Two situations count as one when they
 * differ only in times beyond every hold. Properties of the safety design hold on every transition.
 */
class ExplorationTest {
    private static final long[] GAPS = {100_000_000L, 1_200_000_000L, 7_000_000_000L, 7_500_000_000_000L};
    private static final String STANDS = "time stands still";
    /** Rules that need a history of their own; LastingBreachTest walks each. */
    private static final Set<Integer> NEED_HISTORY = Set.of(26, 27, 36);
    private static final int MOST_STATES = 400_000;

    private final Rig rig = TestRigs.oneCell();
    private final Warden warden = new Warden(rig);
    private final RunMachine machine = new RunMachine(rig, new Program("short", false, List.of(
            new Step.Charge(0, 21, 3.60, 5.25),
            new Step.Rest(1_800_000_000_000L, 7_200_000_000_000L),
            new Step.Discharge(1, 10.5, 2.50),
            new Step.Park(0, 21, 0.4, 3.60))));
    private final Map<String, Letter> letters = letters();

    private record Letter(UnaryOperator<Scans> scan, Inbox inbox) {}

    private record Node(Guard guard, RunState state, Orders inForce, long nanos, long stageNanos, long scans) {}

    @Test
    void no_path_through_judge_next_and_grant_breaks_a_safety_property() {
        Map<String, Node> seen = new HashMap<>();
        Deque<Node> open = new ArrayDeque<>();
        Node start = new Node(warden.fresh(0), RunState.IDLE, Orders.OFF, 0, 0, 0);
        seen.put(key(start), start);
        open.add(start);
        long transitions = 0;
        Map<String, Integer> states = new TreeMap<>();
        Set<Integer> tripped = new TreeSet<>();
        Set<String> used = new TreeSet<>();
        while (!open.isEmpty()) {
            Node node = open.poll();
            states.merge(name(node.state()), 1, Integer::sum);
            for (Map.Entry<String, Letter> letter : letters.entrySet()) {
                for (long gap : GAPS) {
                    Node next = step(node, letter.getValue(), gap, tripped);
                    used.add(letter.getKey());
                    transitions++;
                    if (seen.putIfAbsent(key(next), next) == null) {
                        open.add(next);
                    }
                }
            }
            assertThat(seen.size()).as("states, a finite number").isLessThan(MOST_STATES);
        }
        System.out.printf("explored %d situations, %d letters x %d gaps, %d transitions; by state %s; rules that tripped %s%n",
                seen.size(), letters.size(), GAPS.length, transitions, states, tripped);
        assertThat(states.keySet()).as("every state of the machine is visited")
                .containsAll(Arrays.stream(RunState.class.getPermittedSubclasses()).map(Class::getSimpleName)
                        .filter(name -> !name.equals("Showing")).toList());
        assertThat(used).isEqualTo(letters.keySet());
        Set<Integer> tripping = Rules.of(rig).stream()
                .filter(r -> r.severity() != Severity.WARNS)
                .map(Rule::number)
                .filter(number -> !NEED_HISTORY.contains(number))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(tripped).as("every rule that trips has tripped").containsAll(tripping);
    }

    private Node step(Node node, Letter letter, long gap, Set<Integer> rulesSeen) {
        long nanos = letter.equals(letters.get(STANDS)) ? node.nanos() : node.nanos() + gap;
        Scan scan = letter.scan().apply(new Scans(rig, nanos).obeying(node.inForce(), nanos - node.stageNanos())).scan(node.scans() + 1);
        Judged judged = warden.judge(node.guard(), scan, node.inForce(), letter.inbox());
        Next next = machine.next(node.state(), judged.verdict(), scan, letter.inbox());
        Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, next.wish());
        check(node, letter, scan, judged, granted);
        if (judged.verdict() instanceof Verdict.Unhealthy unhealthy) {
            rulesSeen.add(unhealthy.first().rule().number());
            unhealthy.also().forEach(t -> rulesSeen.add(t.rule().number()));
        }
        boolean same = stage(node.inForce()).equals(stage(granted.orders()));
        return new Node(granted.guard(), next.state(), granted.orders(), nanos, same ? node.stageNanos() : nanos,
                node.scans() + 1);
    }

    private void check(Node node, Letter letter, Scan scan, Judged judged, Granted granted) {
        if (granted.orders() instanceof Orders.Energised on) {
            assertThat(judged.verdict()).as("energised only on a healthy scan").isInstanceOf(Verdict.Healthy.class);
            assertThat(on.lease().scan()).as("lease of this scan").isEqualTo(scan.number());
            assertThat(on.set().amps()).as("within its ceiling")
                    .isLessThanOrEqualTo(on.lease().ceilingAmps(on.way()) * (1 + 1e-9));
            assertThat(letter.inbox().stop()).as("never energised in a cycle with STOP").isFalse();
            assertThat(node.guard()).as("tripped is Off until a granted clear").isInstanceOf(Guard.Watching.class);
            if (node.inForce() instanceof Orders.Energised before) {
                assertThat(on.way()).as("a way changes only through Off").isEqualTo(before.way());
            } else {
                assertThat(value(scan, Role.FEEDBACK)).as("closes only from open feedback").isZero();
                assertThat(Math.abs(value(scan, Role.CURRENT))).as("closes only at no current").isLessThan(1.5);
            }
        }
        if (node.guard() instanceof Guard.Tripped before && granted.guard() instanceof Guard.Tripped after) {
            assertThat(after.first()).as("the first cause is kept").isSameAs(before.first());
        }
        if (node.guard() instanceof Guard.Tripped && granted.guard() instanceof Guard.Watching) {
            assertThat(letter.inbox().has(Request.CLEAR)).as("only a person clears").isTrue();
            assertThat(value(scan, Role.ARM)).as("and only armed").isEqualTo(1);
            assertThat(granted.orders()).as("a clear does not energise").isInstanceOf(Orders.Off.class);
        }
        assertThat(granted.guard() instanceof Guard.Tripped && node.guard() instanceof Guard.Watching
                && judged.guard() instanceof Guard.Watching)
                .as("the real machine never wishes what must not be granted: %s under %s: %s", node.state(),
                        stage(node.inForce()), granted.guard())
                .isFalse();
    }

    private double value(Scan scan, Role role) {
        return scan.readings().get(rig.channel(role).index()) instanceof Reading.Valid v
                ? v.value() : Double.NaN;
    }

    private static String name(RunState state) {
        return state.getClass().getSimpleName();
    }

    private static String stage(Orders orders) {
        return orders instanceof Orders.Energised on ? on.way() + "/" + on.stage() : "off";
    }

    /** What distinguishes two situations: everything, with times rounded to what any hold can tell apart. */
    private String key(Node node) {
        StringBuilder key = new StringBuilder();
        key.append(switch (node.guard()) {
            case Guard.Watching _ -> "watching";
            case Guard.Tripped t -> "tripped" + t.first().rule().number();
        });
        long[] since = node.guard().memory().since();
        for (int i = 0; i < since.length; i++) {
            if (since[i] != Long.MAX_VALUE && node.guard() instanceof Guard.Watching) {
                key.append('!').append(i);
            }
        }
        key.append('|').append(node.guard().memory().started()).append('|').append(stage(node.inForce())).append(band(node.inForce()));
        key.append('|').append(age(node.nanos() - node.stageNanos())).append('|').append(name(node.state())).append(RunState.step(node.state()));
        switch (node.state()) {
            case RunState.Proving p -> key.append(p.healthyScans());
            case RunState.Waiting w -> key.append(w.said()).append(node.nanos() - w.sinceNanos() > 3_600_000_000_000L);
            case RunState.Closes c -> key.append(c.stage());
            case RunState.Showing s -> key.append(s.off());
            case RunState.Opening o -> key.append(o.off()).append(o.by());
            case RunState.Interrupted i -> key.append(i.step()).append(',').append(i.told());
            case RunState.Finished f -> key.append(f.by()).append(',').append(f.told());
            case RunState.Idle _, RunState.Stepping _, RunState.Resting _ -> { }
        }
        String whole = node.state().toString();
        key.append(whole.contains("heartbeatProved=true")).append(whole.contains("ceilingNanos=" + Long.MAX_VALUE));
        return key.toString();
    }

    private static String band(Orders orders) {
        double amps = orders instanceof Orders.Energised on ? on.set().amps() : 0;
        return amps == 0 ? "0" : amps <= 5.25 ? "taper" : amps < 10 ? "small" : "full";
    }

    private static String age(long nanos) {
        return nanos < 400_000_000L ? "a" : nanos < 1_600_000_000L ? "b" : nanos < 5_000_000_000L ? "c" : "d";
    }

    private Map<String, Letter> letters() {
        Map<String, Letter> all = new TreeMap<>();
        all.put("healthy", new Letter(s -> s, Inbox.EMPTY));
        put(all, "feedback closed in silence", s -> s.set(Role.FEEDBACK, 1).set(Role.COIL_FEED, 0));
        put(all, "sink on", s -> s.set(Role.SINK_ON, 1));
        all.put("start armed", new Letter(s -> s, Inbox.of(Request.START)));
        all.put("start not armed", new Letter(s -> s.set(Role.ARM, 0), Inbox.of(Request.START)));
        all.put("clear armed", new Letter(s -> s, Inbox.of(Request.CLEAR)));
        all.put("clear not armed", new Letter(s -> s.set(Role.ARM, 0), Inbox.of(Request.CLEAR)));
        all.put(STANDS, new Letter(s -> s.set(Role.LATENESS, 0), Inbox.EMPTY));
        all.put("stop", new Letter(s -> s, new Inbox(true, List.of())));
        all.put("stop among requests",
                new Letter(s -> s, new Inbox(true, List.of(Request.CLEAR, Request.START))));
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
        put(all, "loop open", s -> s.set(Role.LOOP, 0));
        put(all, "coil dead", s -> s.set(Role.COIL_FEED, 0));
        put(all, "feedback open", s -> s.set(Role.FEEDBACK, 0));
        put(all, "feedback closed", s -> s.set(Role.FEEDBACK, 1));
        put(all, "bus full", s -> s.set(Role.BUS_VOLTS, 3.3));
        put(all, "bus empty", s -> s.set(Role.BUS_VOLTS, 0));
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
        put(all, "source silent", s -> s.old(rig.channel(Role.SOURCE_AMPS), 2_000_000_000L));
        return all;
    }

    private static void put(Map<String, Letter> all, String name, UnaryOperator<Scans> change) {
        all.put(name, new Letter(change, Inbox.EMPTY));
    }

    /** Kept so that a list of letters never silently shrinks. */
    @Test
    void the_alphabet_has_a_letter_for_every_rule_and_cut_off() {
        assertThat(new ArrayList<>(letters.keySet())).hasSizeGreaterThanOrEqualTo(40);
    }
}
