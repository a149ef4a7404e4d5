package rigwarden.loop;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Event;
import rigwarden.run.Glimpse;
import rigwarden.run.Next;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.warden.ChipSum;
import rigwarden.warden.Closing;
import rigwarden.warden.Granted;
import rigwarden.warden.Guard;
import rigwarden.warden.Inbox;
import rigwarden.warden.Judged;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;
import rigwarden.warden.Scans;
import rigwarden.warden.Verdict;
import rigwarden.warden.Warden;
import rigwarden.warden.Way;

/**
 * Walks the real judge, next and grant of a rig and a programme from the first scan through everything that an alphabet of
 * scans can do to them, in each spacing of time. Two situations count as one when they differ only in times beyond every
 * hold, and in readings that are over. Properties of the safety design hold on every transition.
 */
final class Exploration {
    private static final int MOST_STATES = 400_000;
    private static final long LATE_NANOS = 50_000_000_000L;
    private static final double NEAR_TOP_V = 3.57;
    private static final double NEAR_BOTTOM_V = 2.53;

    private final Rig rig;
    private final Warden warden;
    private final RunMachine machine;
    private final long[] gaps;
    private final Map<String, Letter> letters;
    private final List<Channel> cells;
    /** What was seen on the way: states of the machine, rules that tripped, ends of steps. */
    final Map<String, Integer> states = new TreeMap<>();
    final Set<Integer> tripped = new ConcurrentSkipListSet<>();
    final Set<Ended> ends = new ConcurrentSkipListSet<>();
    private long transitions;
    private final Program program;
    private int situations;

    /** One thing that may happen: a change of the obedient rig's scan, and what people want. */
    record Letter(UnaryOperator<Scans> scan, Inbox inbox, boolean timeStands) {
        static Letter seen(UnaryOperator<Scans> scan) {
            return new Letter(scan, Inbox.EMPTY, false);
        }

        static Letter wanted(Inbox inbox) {
            return new Letter(scans -> scans, inbox, false);
        }
    }

    private record Node(Guard guard, RunState state, Orders inForce, long nanos, long stageNanos, long scans, ChipSum sum) {}

    /** A situation with its key. */
    private record Reached(String key, Node node) {}

    Exploration(Rig rig, Program program, Map<String, Letter> letters, long... gaps) {
        this.rig = rig;
        this.warden = new Warden(rig);
        this.program = program;
        this.machine = new RunMachine(rig, program);
        this.letters = letters;
        this.gaps = gaps;
        this.cells = rig.channels(Role.CELL_VOLTS);
    }

    /** Letters that every rig has: what people ask for, and a clock that stands still. */
    static Map<String, Letter> people() {
        Map<String, Letter> all = new TreeMap<>();
        all.put("healthy", Letter.seen(s -> s));
        all.put("start armed", Letter.wanted(Inbox.of(Request.START)));
        all.put("start not armed", new Letter(s -> s.set(Role.ARM, 0), Inbox.of(Request.START), false));
        all.put("clear armed", Letter.wanted(Inbox.of(Request.CLEAR)));
        all.put("clear not armed", new Letter(s -> s.set(Role.ARM, 0), Inbox.of(Request.CLEAR), false));
        all.put("time stands still", new Letter(s -> s.set(Role.LATENESS, 0), Inbox.EMPTY, true));
        all.put("stop", Letter.wanted(new Inbox(true, List.of())));
        all.put("stop among requests", Letter.wanted(new Inbox(true, List.of(Request.CLEAR, Request.START))));
        return all;
    }

    /** Level by level, each on all cores; the order in which situations are first met does not depend on their number. */
    void walk() {
        Set<String> seen = new HashSet<>();
        Node start = new Node(warden.fresh(0), RunState.IDLE, Orders.OFF, 0, 0, 0, ChipSum.NOTHING);
        seen.add(key(start));
        List<Node> level = List.of(start);
        while (!level.isEmpty()) {
            level.forEach(node -> states.merge(name(node.state()), 1, Integer::sum));
            transitions += (long) level.size() * letters.size() * gaps.length;
            Map<String, Node> fresh = new HashMap<>();
            List<Node> next = new ArrayList<>();
            level.parallelStream().flatMap(this::reached).toList().forEach(reached -> {
                if (!seen.contains(reached.key()) && fresh.putIfAbsent(reached.key(), reached.node()) == null) {
                    next.add(reached.node());
                }
            });
            seen.addAll(fresh.keySet());
            must(seen.size() < MOST_STATES, "a finite number of situations");
            level = next;
        }
        situations = seen.size();
    }

    String counts() {
        return String.format("%s: explored %d situations, %d letters x %d gaps, %d transitions; by state %s; ends %s; rules that tripped %s",
                rig.name(), situations, letters.size(), gaps.length, transitions, states, ends, tripped);
    }

    private Stream<Reached> reached(Node node) {
        Map<String, Node> reached = new TreeMap<>();
        for (Map.Entry<String, Letter> letter : letters.entrySet()) {
            for (long gap : gaps) {
                Node next = step(node, letter.getKey(), letter.getValue(), gap);
                reached.putIfAbsent(key(next), next);
            }
        }
        return reached.entrySet().stream().map(e -> new Reached(e.getKey(), e.getValue()));
    }

    private Node step(Node node, String name, Letter letter, long gap) {
        long nanos = letter.timeStands() ? node.nanos() : node.nanos() + gap;
        Scans obedient = new Scans(rig, nanos).obeying(node.inForce(), nanos - node.stageNanos());
        Scans seen = letter.scan().apply(obedient);
        ChipSum sum = node.sum().with(rig, seen);
        Scan scan = seen.summed(sum).scan(node.scans() + 1);
        Judged judged = warden.judge(node.guard(), scan, node.inForce(), letter.inbox());
        Next next = machine.next(node.state(), judged.verdict(), scan, letter.inbox());
        Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, next.wish());
        try {
            check(node, letter, scan, judged, next, granted);
        } catch (AssertionError e) {
            throw new AssertionError("letter " + name + " after " + gap + " ns at " + node.state() + " under "
                    + stage(node.inForce()) + ": " + e.getMessage() + "; guard " + granted.guard(), e);
        }
        if (judged.verdict() instanceof Verdict.Unhealthy unhealthy) {
            tripped.add(unhealthy.first().rule().number());
            unhealthy.also().forEach(t -> tripped.add(t.rule().number()));
        }
        for (Event event : next.events()) {
            if (event instanceof Event.StepEnded ended) {
                ends.add(ended.by());
            }
        }
        boolean same = stage(node.inForce()).equals(stage(granted.orders()));
        return new Node(granted.guard(), next.state(), granted.orders(), nanos, same ? node.stageNanos() : nanos,
                node.scans() + 1, sum);
    }

    private static void must(boolean holds, String property) {
        if (!holds) {
            throw new AssertionError("not so: " + property);
        }
    }

    private void check(Node node, Letter letter, Scan scan, Judged judged, Next next, Granted granted) {
        if (granted.orders() instanceof Orders.Energised on) {
            energised(node, letter, scan, judged, on);
            path(node, scan, next, on);
        }
        if (node.guard() instanceof Guard.Tripped before && granted.guard() instanceof Guard.Tripped after) {
            must(after.first() == before.first(), "the first cause is kept");
        }
        if (node.guard() instanceof Guard.Tripped && granted.guard() instanceof Guard.Watching) {
            must(letter.inbox().has(Request.CLEAR), "only a person clears");
            must(value(scan, Role.ARM) == 1, "and only armed");
            must(granted.orders() instanceof Orders.Off, "a clear does not energise");
        }
        must(!(granted.guard() instanceof Guard.Tripped && node.guard() instanceof Guard.Watching
                && judged.guard() instanceof Guard.Watching), "the real machine never wishes what must not be granted");
    }

    private void energised(Node node, Letter letter, Scan scan, Judged judged, Orders.Energised on) {
        must(judged.verdict() instanceof Verdict.Healthy, "energised only on a healthy scan");
        must(on.lease().scan() == scan.number(), "lease of this scan");
        must(on.set().amps() <= on.lease().ceilingAmps(on.way()) * (1 + 1e-9), "within its ceiling");
        must(!letter.inbox().stop(), "never energised in a cycle with STOP");
        must(node.guard() instanceof Guard.Watching, "tripped is Off until a granted clear");
        if (node.inForce() instanceof Orders.Energised before) {
            must(on.way() == before.way() && on.through() == before.through(), "a way and its device change only through Off");
            boolean alone = before.stage() == Closing.RELAY_ALONE || before.stage() == Closing.CONTACTOR_ALONE;
            must(!alone || on.stage() == before.stage(), "from one element alone only to Off");
            must(on.stage() == Closing.NO_LOAD == (before.stage() == Closing.NO_LOAD), "from no load to a cell only through Off");
        } else {
            must(value(scan, Role.FEEDBACK) == 0, "closes only from open feedback");
            must(Math.abs(value(scan, Role.CURRENT)) < 1.5, "closes only at no current");
            must(value(scan, Role.BUS_VOLTS) < 0.95 * value(scan, Role.PACK_VOLTS), "and only from a bus that nothing holds up");
        }
    }

    private void path(Node node, Scan scan, Next next, Orders.Energised on) {
        Device device = rig.devices().get(on.through());
        must(device.charges() == (on.way() == Way.CHARGE), "a device works in its own way only");
        must(on.set().amps() <= rig.ceilingAmps(device) * (1 + 1e-9), "within its device's ceiling");
        if (device.charges() && device.switched() && on.stage() != Closing.NO_LOAD) {
            must(Glimpse.shown(next.state()).contains(on.through()), "no switched source meets a cell before it was looked at");
        }
        if (next.state() instanceof RunState.Opening && node.state() instanceof RunState.Stepping) {
            must(on.set().amps() == 0, "a step that is over orders no current in that very cycle");
        }
        if (device.charges() && on.set().amps() > 0) {
            must(value(scan, Role.BODY) <= 40, "no charge above 40 °C");
        }
    }

    private double value(Scan scan, Role role) {
        return value(scan, rig.channel(role));
    }

    private static double value(Scan scan, Channel channel) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid v ? v.value() : Double.NaN;
    }

    private static String name(RunState state) {
        return state.getClass().getSimpleName();
    }

    private static String stage(Orders orders) {
        return orders instanceof Orders.Energised on ? on.way() + "/" + on.through() + on.stage() : "off";
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
            case RunState.Waiting w -> key.append(w.said()).append(node.nanos() - w.sinceNanos() > 3_600_000_000_000L)
                    .append(node.nanos() < w.notBeforeNanos());
            case RunState.Closes c -> key.append(c.stage());
            case RunState.Showing s -> key.append(s.off());
            case RunState.Opening o -> key.append(o.off()).append(o.by());
            case RunState.Interrupted i -> key.append(i.step()).append(',').append(i.told());
            case RunState.Finished f -> key.append(f.by()).append(',').append(f.told());
            case RunState.Parting p -> key.append(p.gone());
            case RunState.Stepping _ -> key.append(near(node.guard().memory().last()));
            case RunState.Idle _, RunState.Resting _ -> { }
        }
        key.append(late(node)).append(Glimpse.heartbeats(node.state())).append(Glimpse.metCeiling(node.state()))
                .append(Glimpse.shown(node.state()));
        return key.toString();
    }

    /** Whether the time in which a step of a proof must have been proved is nearly over, or is. */
    private boolean late(Node node) {
        int step = RunState.step(node.state());
        boolean proof = step > 0 && program.steps().get(step - 1) instanceof Step.ProveStop;
        return proof && Glimpse.sinceNanos(node.state()) != Long.MAX_VALUE && node.nanos() - Glimpse.sinceNanos(node.state()) > LATE_NANOS;
    }

    /** Whether a cell was where the battery's protection opens. */
    private String near(Scan scan) {
        if (rig.protection().isEmpty() || scan.readings().isEmpty()) {
            return "";
        }
        boolean top = false;
        boolean bottom = false;
        for (Channel cell : cells) {
            top |= value(scan, cell) >= NEAR_TOP_V;
            bottom |= value(scan, cell) <= NEAR_BOTTOM_V;
        }
        return top ? "top" : bottom ? "bottom" : "";
    }

    private static String band(Orders orders) {
        double amps = orders instanceof Orders.Energised on ? on.set().amps() : 0;
        return amps == 0 ? "0" : amps <= 5.25 ? "taper" : amps < 10 ? "small" : "full";
    }

    private static String age(long nanos) {
        return nanos < 400_000_000L ? "a" : nanos < 1_600_000_000L ? "b" : nanos < 5_000_000_000L ? "c" : "d";
    }
}
