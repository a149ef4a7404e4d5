package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Mishap;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.program.Step.Element;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.warden.Trip;

/** Each element that must stop the current alone, opened alone on the real code path; and what stands when it does not. */
class StopProofTest {
    /** Every event of a programme of proofs, with welds before its first scan. */
    private static List<Event> events(Rig rig, List<Step> steps, List<Mishap> mishaps) {
        try {
            Rehearsal rehearsal = new Rehearsal(rig, new Program("stops", false, steps), 3, mishaps, Bench.NOWHERE);
            List<Event> events = new ArrayList<>();
            for (int scan = 0; scan < 6000 && !rehearsal.over(); scan++) {
                events.addAll(rehearsal.scan());
            }
            return events;
        } catch (BusFailure e) {
            throw new AssertionError(e);
        }
    }

    private static List<String> proved(List<Event> events) {
        return events.stream().filter(Event.StopProved.class::isInstance).map(Event.StopProved.class::cast)
                .map(e -> e.device() + " " + e.element()).toList();
    }

    @Test
    void on_one_cell_relay_and_contactor_each_stop_source_and_sink() {
        List<Event> events = events(Bench.rig(), List.of(new Step.ProveStop(0, 5, Element.RELAY),
                new Step.ProveStop(0, 5, Element.CONTACTOR), new Step.ProveStop(1, 5, Element.RELAY),
                new Step.ProveStop(1, 5, Element.CONTACTOR)), List.of());

        assertThat(proved(events)).containsExactly("source RELAY", "source CONTACTOR", "sink RELAY", "sink CONTACTOR");
        assertThat(events).filteredOn(Event.StopProved.class::isInstance)
                .allSatisfy(e -> assertThat(((Event.StopProved) e).seconds()).isLessThan(0.5));
    }

    @Test
    void on_a_pack_the_charger_s_mains_and_the_inverter_s_remote_input_stop_it_too() {
        Rig rig = Bench.packRig();

        List<Event> events = events(rig, List.of(new Step.ProveStop(0, rig.devices().get(0).maxAmps(), Element.RELAY),
                new Step.ProveStop(1, 5, Element.RELAY), new Step.ProveStop(1, 5, Element.CONTACTOR),
                new Step.ProveStop(2, rig.devices().get(2).maxAmps(), Element.RELAY)), List.of());

        assertThat(proved(events)).containsExactly("charger RELAY", "sink RELAY", "sink CONTACTOR", "inverter RELAY");
    }

    /** A relay that is stuck is found with the contactor still there to stop it, and a welded contact with the relay. */
    @TestFactory
    Stream<DynamicTest> what_is_welded_is_named_and_the_other_one_stops_the_current() {
        return Stream.of(
                new Stuck(Element.RELAY, Line.SINK_RELAY, 39),
                new Stuck(Element.CONTACTOR, Line.CONTACTOR, 40))
                .map(stuck -> DynamicTest.dynamicTest(stuck.element().toString(), () -> found(stuck)));
    }

    private record Stuck(Element element, Line line, int rule) {}

    private static void found(Stuck stuck) throws BusFailure {
        Program program = new Program("stops", false, List.of(new Step.ProveStop(1, 5, stuck.element())));
        Rehearsal rehearsal = new Rehearsal(Bench.rig(), program, 3, List.of(), Bench.NOWHERE);
        Bench.until(rehearsal, () -> Math.abs(rehearsal.rig().world().amps()) > 4);

        rehearsal.inflict(new BoardFault.InWorld(new Fault.Weld(stuck.line())));
        Trip trip = null;
        for (int scan = 0; scan < 200 && trip == null; scan++) {
            for (Event event : rehearsal.scan()) {
                trip = event instanceof Event.Tripped tripped ? tripped.first() : trip;
            }
        }

        assertThat(trip).as("a trip").isNotNull();
        assertThat(trip.rule().number()).isEqualTo(stuck.rule());
        Bench.seconds(rehearsal, 1);
        assertThat(Math.abs(rehearsal.rig().world().amps())).isLessThan(0.1);
    }
}
