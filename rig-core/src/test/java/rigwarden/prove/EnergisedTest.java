package rigwarden.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.program.Step.Element;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.run.Account;
import rigwarden.run.Event;
import rigwarden.warden.Rules;
import rigwarden.warden.Trip;

/** The energised part: its programme, its outcomes in plain words, and the joints at small current. */
class EnergisedTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();

    private final Bedside bedside = new Bedside(PACK);
    private final Energised energised = new Energised(PACK, Stops.programme(PACK));

    @Test
    void every_relay_is_opened_alone_and_the_contactor_once_a_way_through_what_can_be_told_a_small_current() {
        assertThat(Stops.programme(CELL).steps()).containsExactly(new Step.ProveStop(0, 5.25, Element.RELAY), new Step.ProveStop(0, 5.25, Element.CONTACTOR),
                new Step.ProveStop(1, 5.25, Element.RELAY), new Step.ProveStop(1, 5.25, Element.CONTACTOR));
        assertThat(Stops.programme(PACK).steps()).containsExactly(new Step.ProveStop(0, 21, Element.RELAY), new Step.ProveStop(0, 21, Element.CONTACTOR),
                new Step.ProveStop(1, 5.25, Element.RELAY), new Step.ProveStop(1, 5.25, Element.CONTACTOR),
                new Step.ProveStop(2, PACK.devices().get(2).maxAmps(), Element.RELAY));
        assertThat(Stops.programme(PACK).unattended()).isFalse();
    }

    private List<Outcome> happens(Event... events) {
        return energised.take(bedside.scan(), List.of(events));
    }

    private static Outcome only(List<Outcome> outcomes) {
        assertThat(outcomes).hasSize(1);
        return outcomes.getFirst();
    }

    @Test
    void a_stop_a_heartbeat_and_a_voltage_without_load_are_outcomes_of_their_own() {
        assertThat(only(happens(new Event.NoLoadShown("charger", 28.9)))).isEqualTo(Outcome.passed(Outcome.Part.NO_LOAD, "charger", "28.90 V without load"));
        assertThat(only(happens(new Event.StopProved("charger", Element.RELAY, 0.2))).kind()).isEqualTo("stop charger relay");
        assertThat(only(happens(new Event.HeartbeatProved(0.8))).kind()).isEqualTo("heartbeat line low");
        assertThat(happens()).isEmpty();
        assertThat(energised.over()).extracting(Outcome::kind)
                .containsExactly("stop charger contactor", "stop sink relay", "stop sink contactor", "stop inverter relay",
                        "heartbeat line high", "joint");
        assertThat(energised.outcomes()).hasSize(9);
    }

    /** Stated are 0.6 and 1.0 s; the scan in which it is seen and those beside count. */
    @Test
    void a_heartbeat_stage_outside_its_stated_hold_is_wrong_although_the_warden_bears_it() {
        assertThat(only(happens(new Event.HeartbeatProved(1.17))).result()).isEqualTo(Outcome.Result.PASSED);
        assertThat(only(happens(new Event.HeartbeatProved(1.19))).words()).contains("it should be 0.6…1.0 s");
        assertThat(only(happens(new Event.HeartbeatProved(0.46))).result()).isEqualTo(Outcome.Result.PASSED);
        assertThat(only(happens(new Event.HeartbeatProved(0.44))).result()).isEqualTo(Outcome.Result.FAILED);
    }

    private static Event ended(Ended by) {
        return new Event.StepEnded(2, by, false, Account.EMPTY);
    }

    @Test
    void a_step_that_proved_nothing_says_why_and_what_was_not_reached_is_named_once() {
        happens(new Event.StepBegun(2, "prove_stop"));
        assertThat(only(happens(ended(Ended.CEILING)))).satisfies(o -> {
            assertThat(o.kind()).isEqualTo("stop charger contactor");
            assertThat(o.words()).contains("a cell is too full");
        });
        assertThat(only(happens(ended(Ended.CUT_OFF))).words()).contains("too empty");
        assertThat(only(happens(ended(Ended.TIME))).words()).contains("did not come, or did not go");
        assertThat(happens(ended(Ended.PROVED))).isEmpty();
        assertThat(happens(ended(Ended.TRIPPED))).isEmpty();
        assertThat(energised.over()).extracting(Outcome::kind)
                .containsExactly("stop charger relay", "stop sink relay", "stop sink contactor", "stop inverter relay", "heartbeat line low", "heartbeat line high",
                        "joint");
    }

    private static Event tripped(int rule) {
        var one = Rules.of(PACK).stream().filter(r -> r.number() == rule).findFirst().orElseThrow();
        return new Event.Tripped(new Trip(one, PACK.channel(Role.CURRENT), 5.2, 1.0, 0, 7), List.of());
    }

    @Test
    void a_trip_is_told_once_in_plain_words_with_what_to_look_at() {
        happens(new Event.StepBegun(3, "prove_stop"));
        Outcome first = only(happens(tripped(14)));

        assertThat(first.kind()).isEqualTo("stop sink relay");
        assertThat(first.words()).contains("at current_a where 1.000 is the limit (rule 14, while proving sink relay)", "sense leads are swapped");
        assertThat(happens(tripped(15))).isEmpty();
    }

    @Test
    void a_trip_belongs_to_what_its_rule_is_about_and_each_rule_says_something() {
        assertThat(only(new Energised(PACK, Stops.programme(PACK)).take(bedside.scan(), List.of(tripped(44)))).kind()).isEqualTo("heartbeat");
        assertThat(only(new Energised(PACK, Stops.programme(PACK)).take(bedside.scan(), List.of(tripped(17)))).part()).isEqualTo(Outcome.Part.NO_LOAD);
        assertThat(only(new Energised(PACK, Stops.programme(PACK)).take(bedside.scan(), List.of(tripped(40)))).words()).contains("part the cells by hand");
        assertThat(only(new Energised(PACK, Stops.programme(PACK)).take(bedside.scan(), List.of(tripped(51)))).kind()).isEqualTo("stop before the first current");
    }

    /** Ten scans of 50 A, one while it falls, five without; cells drop by their own resistance. */
    private List<Outcome> dropped(IntToDoubleFunction ohms, double amps) {
        for (int scan = 0; scan < 16; scan++) {
            double now = scan < 10 ? amps : scan == 10 ? amps / 2 : 0;
            bedside.twist = scans -> {
                scans.set(Role.CURRENT, now);
                double[] taps = new double[8];
                for (int k = 0; k < 8; k++) {
                    taps[k] = 3.3 + now * ohms.applyAsDouble(k) + (k % 4 == 0 ? 0 : taps[k - 1]);
                    bedside.read(scans, taps, k);
                }
            };
            List<Event> events = scan == 15 ? List.of(new Event.StopProved("inverter", Element.RELAY, 0.1)) : List.of();
            energised.take(bedside.scan(), events);
        }
        return energised.over().stream().filter(o -> o.part() == Outcome.Part.JOINT && !o.what().equals("way")).toList();
    }

    /** With 50 A that a relay of its own stops the bus moves by the drop of this way. */
    private Outcome way(double ohms) {
        double pack = 26.4;
        for (int scan = 0; scan < 16; scan++) {
            double now = scan < 10 ? -50 : scan == 10 ? -25 : 0;
            bedside.twist = scans -> scans.set(Role.CURRENT, now).set(Role.PACK_VOLTS, pack).set(Role.BUS_VOLTS, pack + 0.08 + now * ohms);
            List<Event> events = scan == 15 ? List.of(new Event.StopProved("inverter", Element.RELAY, 0.1)) : List.of();
            energised.take(bedside.scan(), events);
        }
        return energised.over().stream().filter(o -> o.what().equals("way")).findFirst().orElseThrow();
    }

    @Test
    void the_way_from_pack_to_bus_is_judged_by_its_step_so_that_an_offset_of_the_voltmeters_does_not_matter() {
        assertThat(way(0.9 * PACK.busSide().pathOhms()).result()).isEqualTo(Outcome.Result.PASSED);
    }

    @Test
    void a_way_that_resists_more_than_the_rig_file_says_is_told_with_where_to_look() {
        Outcome found = way(1.5 * PACK.busSide().pathOhms());

        assertThat(found.result()).isEqualTo(Outcome.Result.FAILED);
        assertThat(found.words()).contains("look at lugs, fuse, shunt and contacts");
    }

    @Test
    void sound_joints_are_in_family_and_the_first_cell_without_a_bar_is_too() {
        Outcome found = only(dropped(k -> k == 0 ? 300e-6 : 500e-6, -50));

        assertThat(found.result()).isEqualTo(Outcome.Result.PASSED);
        assertThat(found.words()).startsWith("all in family: the middle has 500 µΩ, the highest 50");
    }

    @Test
    void a_cell_out_of_family_is_named_with_its_resistance_and_from_where_it_would_be_found() {
        Outcome found = only(dropped(k -> k == 4 ? 800e-6 : 500e-6, -50));

        assertThat(found.what()).isEqualTo("cell 5");
        assertThat(found.words()).matches("joint or tap at cell 5: (79\\d|80\\d) µΩ where its likes have (49\\d|50\\d) µΩ; found from 1[23]\\d µΩ more");
    }

    @Test
    void what_one_cell_has_more_and_the_next_less_is_a_tap_on_the_bar() {
        Outcome found = only(dropped(k -> k == 5 ? 650e-6 : k == 6 ? 350e-6 : 500e-6, 50));

        assertThat(found.what()).isEqualTo("tap 6");
        assertThat(found.words()).contains("its tap sits on the bar");
    }

    @Test
    void a_cell_with_less_than_its_likes_has_the_tap_below_it_on_the_bar() {
        assertThat(only(dropped(k -> k == 0 ? 430e-6 : k == 1 ? 370e-6 : 500e-6, 50)).kind()).isEqualTo("joint tap 1");
        assertThat(only(new EnergisedTest().dropped(k -> k == 4 ? 370e-6 : 500e-6, 50)).kind()).isEqualTo("joint tap 4");
    }

    @Test
    void a_proof_in_which_no_drop_of_the_current_was_seen_has_not_looked_at_the_joints() {
        assertThat(only(dropped(_ -> 500e-6, 0.9)).words()).contains("no joint was looked at");
        assertThat(new Energised(PACK, new Program("none", false, List.of())).over()).extracting(Outcome::kind)
                .containsExactly("heartbeat line low", "heartbeat line high", "joint");
    }
}
