package rigwarden.proof;

import static rigwarden.proof.WiringFault.now;
import static rigwarden.prove.Outcome.Part.AT_REST;
import static rigwarden.prove.Outcome.Part.GROUNDS;
import static rigwarden.prove.Outcome.Part.HEARTBEAT;
import static rigwarden.prove.Outcome.Part.JOINT;
import static rigwarden.prove.Outcome.Part.LOOP;
import static rigwarden.prove.Outcome.Part.NO_LOAD;
import static rigwarden.prove.Outcome.Part.PROBE;
import static rigwarden.prove.Outcome.Part.STOP;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Mishap;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.program.Step;
import rigwarden.prove.Outcome;
import rigwarden.prove.Prompt;
import rigwarden.prove.Stops;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** The ways to wire a rig wrongly that the guided check is tried against. */
final class WiringFaults {
    private static final Optional<Class<? extends Prompt>> REST = Optional.of(Prompt.Warm.class);
    private static final Optional<Class<? extends Prompt>> FINGERS = Optional.of(Prompt.Press.class);
    private static final Optional<Class<? extends Prompt>> WHOLE_REST = Optional.of(Prompt.Confirm.class);
    private static final Optional<Class<? extends Prompt>> ENERGISED = Optional.empty();
    private static final List<Double> ONE = List.of(1.0);

    private WiringFaults() {}

    static List<WiringFault> of(Rig rig) {
        List<WiringFault> faults = new ArrayList<>(common());
        if (rig.cells().series() > 1) {
            faults.addAll(ofPack());
        }
        return faults;
    }

    private static Predicate<Outcome> of(Outcome.Part part, String what, String words) {
        return o -> o.part() == part && o.what().contains(what) && o.words().contains(words);
    }

    private static Mishap world(Fault fault) {
        return now(new BoardFault.InWorld(fault));
    }

    /** Numbers of the cells' inputs in the rig's list. */
    private static int input(Rig rig, Random chance) {
        int[] cells = IntStream.range(0, rig.inputs().size()).filter(i -> rig.inputs().get(i).role() != Role.BUS_VOLTS).toArray();
        return cells[chance.nextInt(cells.length)];
    }

    private static int probe(Rig rig, Random chance) {
        return chance.nextInt(rig.probes().size());
    }

    /** Any but the room's own, with which the others are compared. */
    private static int anyButTheRoom(Rig rig, Random chance) {
        int probe = probe(rig, chance);
        return rig.probes().get(probe).place() == Role.ROOM ? 0 : probe;
    }

    private static int otherProbe(Rig rig, int one, Random chance) {
        return (one + 1 + chance.nextInt(rig.probes().size() - 1)) % rig.probes().size();
    }

    private static List<WiringFault> common() {
        return List.of(
                new WiringFault("tap's two wires reversed", "", ONE, 1, REST,
                        (rig, _, chance) -> now(new BoardFault.InputDrifts(input(rig, chance), -1)), of(AT_REST, "taps", "reads nothing")),
                new WiringFault("tap missing", "", ONE, 1, REST,
                        (rig, _, chance) -> world(new Fault.BrokenTap(1 + chance.nextInt(rig.cells().series()))), of(AT_REST, "taps", "reads nothing")),
                new WiringFault("shunt reads beside zero", "µV", List.of(1.0, 2.0, 3.0, 4.0, 6.0, 10.0), 3.0, REST,
                        (_, size, _) -> now(new BoardFault.ShuntOffset(size * 1e-6)), of(AT_REST, "zero", "")),
                new WiringFault("probe reads beside the room", "K", List.of(2.0, 3.0, 4.0, 6.0, 8.0, 10.0), 8.0, FINGERS,
                        (rig, size, chance) -> now(new BoardFault.ProbeDrifts(anyButTheRoom(rig, chance), size)), of(AT_REST, "probes", "")),
                new WiringFault("probe's wire open", "", ONE, 1, REST,
                        (rig, _, chance) -> now(new BoardFault.OpenProbe(probe(rig, chance))), of(AT_REST, "channels", "")),
                new WiringFault("two probes swapped", "", ONE, 1, FINGERS, (rig, _, chance) -> {
                    int one = probe(rig, chance);
                    return now(new BoardFault.ProbesSwapped(one, otherProbe(rig, one, chance)));
                }, of(PROBE, "", "swapped")),
                new WiringFault("probe's two wires reversed", "", ONE, 1, FINGERS,
                        (rig, _, chance) -> now(new BoardFault.ProbeReversed(probe(rig, chance))), of(PROBE, "", "reversed")),
                new WiringFault("probe has come off", "", ONE, 1, FINGERS,
                        (rig, _, chance) -> world(new Fault.DetachedBead(probe(rig, chance))), of(PROBE, "", "")),
                new WiringFault("loop contact bridged", "", ONE, 1, WHOLE_REST,
                        (rig, _, chance) -> now(new BoardFault.ContactBridged(chance.nextInt(rig.guards().loopContacts().size()))), of(LOOP, "", "bridged")),
                new WiringFault("loop does not latch", "", ONE, 1, WHOLE_REST,
                        (_, _, _) -> now(new BoardFault.LoopForgets()), of(LOOP, "", "latch")),
                new WiringFault("links tie two grounds", "µV", List.of(10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 100.0), 60.0, WHOLE_REST,
                        (_, size, _) -> now(new BoardFault.LinksTied(size * 1e-6)), of(GROUNDS, "", "")),
                new WiringFault("contactor welded from before", "", ONE, 1, REST,
                        (_, _, _) -> world(new Fault.Weld(Line.CONTACTOR)), of(AT_REST, "feedback", "weld")),
                new WiringFault("shunt's sense leads swapped", "", ONE, 1, ENERGISED,
                        (_, _, _) -> now(new BoardFault.ShuntDrifts(-1)), of(STOP, "", "sense leads are swapped")),
                new WiringFault("sink's relay stuck", "", ONE, 1, ENERGISED,
                        (_, _, _) -> world(new Fault.Weld(Line.SINK_RELAY)), of(STOP, "sink relay", "rule 39")),
                new WiringFault("contactor welds under current", "", ONE, 1, ENERGISED, WiringFaults::weldsLater, of(STOP, "contactor", "rule 40")),
                new WiringFault("heartbeat stage stuck high or low", "", ONE, 1, ENERGISED,
                        (_, _, chance) -> world(new Fault.StuckHeartbeat(chance.nextBoolean())), of(HEARTBEAT, "", "")),
                new WiringFault("heartbeat stage held by one level", "", ONE, 1, ENERGISED,
                        (_, _, chance) -> world(new Fault.HeartbeatHeldBy(chance.nextBoolean())), of(HEARTBEAT, "", "")),
                new WiringFault("heartbeat stage holds too long", "s", List.of(1.02, 1.05, 1.1, 1.2, 1.3, 1.5, 2.0), 1.2, ENERGISED,
                        (_, size, _) -> world(new Fault.SlowHeartbeat(size)), of(HEARTBEAT, "", "")),
                new WiringFault("heartbeat stage holds too short", "s", List.of(0.58, 0.5, 0.4, 0.3, 0.25), 0.4, ENERGISED,
                        (_, size, _) -> world(new Fault.SlowHeartbeat(size)), of(HEARTBEAT, "", "")));
    }

    /** While the contactor's own step has it closed: its coil is dropped afterwards and the contact stays. */
    private static Mishap weldsLater(Rig rig, double size, Random chance) {
        var steps = Stops.programme(rig).steps();
        int last = 0;
        for (int i = 0; i < steps.size(); i++) {
            var stop = (Step.ProveStop) steps.get(i);
            boolean told = !rig.devices().get(stop.through()).switched();
            last = told && stop.element() == Step.Element.CONTACTOR ? i + 1 : last;
        }
        return new Mishap("", new BoardFault.InWorld(new Fault.Weld(Line.CONTACTOR)), last, 2_000_000_000L + chance.nextInt(200_000_000));
    }

    private static List<WiringFault> ofPack() {
        return List.of(
                new WiringFault("two taps swapped", "", ONE, 1, REST, (rig, _, chance) -> {
                    int one = 1 + chance.nextInt(rig.cells().series());
                    int other = 1 + (one + chance.nextInt(rig.cells().series() - 1)) % rig.cells().series();
                    return now(new BoardFault.TapsSwapped(one, other));
                }, of(AT_REST, "taps", "swapped")),
                new WiringFault("two taps on one stud", "", ONE, 1, REST, (rig, _, chance) -> {
                    int tap = 2 + chance.nextInt(rig.cells().series() - 1);
                    return now(new BoardFault.TapOnStud(tap, tap - 1));
                }, of(AT_REST, "taps", "")),
                new WiringFault("divider of the highest tap", "%", List.of(0.05, 0.1, 0.2, 0.3, 0.5, 1.0), 0.3, REST, (rig, size, _) -> {
                    int top = IntStream.range(0, rig.inputs().size()).filter(i -> rig.inputs().get(i).cell() == rig.cells().series()).findFirst().orElseThrow();
                    return now(new BoardFault.InputDrifts(top, 1 + size / 100));
                }, of(AT_REST, "", "")),
                new WiringFault("charger's no-load voltage", "V", List.of(0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 1.0), 0.7, ENERGISED,
                        (_, size, _) -> world(new Fault.ChargerHigh(0, size)), of(NO_LOAD, "", "")),
                new WiringFault("joint loose", "µΩ", List.of(50.0, 80.0, 100.0, 125.0, 150.0, 200.0, 300.0), 150.0, ENERGISED,
                        (rig, size, chance) -> world(new Fault.LooseJoint(chance.nextInt(rig.cells().series() - 1), true, size * 1e-6)), of(JOINT, "", "")),
                new WiringFault("tap on the bar", "of its drop", List.of(0.3, 0.5, 0.7, 0.8, 0.9, 1.0), 0.9, ENERGISED,
                        (rig, size, chance) -> now(new BoardFault.TapOnBar(1 + chance.nextInt(rig.cells().series() - 1), size)), of(JOINT, "", "")));
    }
}
