package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Channels that fall silent, outputs that should be off, paths that are lost: what is said of them. */
class ChannelRulesTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());
    private static final long SECOND = Moment.SECOND;
    private static final int SINK = 1;

    @Test
    void silence_is_told_in_seconds_against_two_and_a_half_periods() {
        Moment moment = new Moment(CELL);
        Channel body = moment.column("cell_01_c");
        Breach failed = moment.failed(body, 600_000_000L).look(31);
        assertThat(failed).isEqualTo(new Breach(body.index(), failed.value(), failed.limit()));
        assertThat(failed.value()).as("a period more than since the first failure").isCloseTo(0.8, within(1e-12));
        assertThat(failed.limit()).isCloseTo(0.5, within(1e-12));
        Moment other = new Moment(CELL);
        Breach stale = other.old(body, 700_000_000L).look(32);
        assertThat(stale.value()).isCloseTo(0.7, within(1e-12));
        assertThat(stale.limit()).isCloseTo(0.5, within(1e-12));
        assertThat(stale.channel()).isEqualTo(body.index());
    }

    @Test
    void a_reading_at_its_very_age_is_not_stale_and_hides_no_older_one() {
        Moment moment = new Moment(CELL);
        Channel room = CELL.channel(Role.ROOM);
        moment.old(moment.column("cell_01_c"), 500_000_000L).old(room, 600_000_000L);

        assertThat(moment.look(32).channel()).isEqualTo(room.index());
    }

    /** 2.5 polls of 0.5 s. */
    @Test
    void nonsense_lasts_for_two_polls_of_the_instruments_however_slow_another_channel_is() {
        Rig slow = CELL.with(CELL.channels().stream().map(c -> c.role() == Role.ROOM ? every(c, 10 * SECOND) : c).toList());

        assertThat(Rules.of(slow)).filteredOn(rule -> rule.number() == 56).extracting(Rule::holdNanos).containsExactly(1_250_000_000L);
    }

    private static Channel every(Channel c, long periodNanos) {
        return new Channel(c.index(), c.name(), c.role(), c.cell(), periodNanos, c.scale(), c.shift(), c.gainU(), c.offsetU(), c.lowest(),
                c.highest(), c.lagSeconds());
    }

    @Test
    void a_clock_that_stands_is_told_and_one_that_went_a_nanosecond_is_not() {
        Moment moment = new Moment(CELL);
        moment.last = new Scan(6, Moment.NOW, moment.scan().readings());
        assertThat(moment.look(55).channel()).isEqualTo(CELL.channel(Role.LATENESS).index());
        moment.last = new Scan(6, Moment.NOW - 1, moment.scan().readings());
        assertThat(moment.look(55)).isEqualTo(Breach.NONE);
    }

    /** With less than 2 A ordered a tenth cannot be told from none. */
    @Test
    void current_that_is_missing_is_told_from_two_ordered_amperes_on() {
        assertThat(new Moment(CELL).flowing(0, 2, 100 * SECOND).set(Role.CURRENT, 0).look(13).found()).isTrue();
        assertThat(new Moment(CELL).flowing(0, Math.nextDown(2.0), 100 * SECOND).set(Role.CURRENT, 0).look(13).found()).isFalse();
    }

    @Test
    void a_fresh_failure_and_an_instrument_s_age_are_not_another_rule_s() {
        Moment fresh = new Moment(CELL);
        assertThat(fresh.failed(Role.BODY).look(31)).isEqualTo(Breach.NONE);
        assertThat(fresh.look(32)).isEqualTo(Breach.NONE);
        Moment instrument = new Moment(CELL);
        assertThat(instrument.old(instrument.column("source_a"), 9 * SECOND).look(32)).isEqualTo(Breach.NONE);
        Moment absurd = new Moment(CELL).set("source_a", 1e6);
        assertThat(absurd.look(33)).as("its own panel's matter").isEqualTo(Breach.NONE);
    }

    @Test
    void when_all_fail_at_once_it_is_told_too() {
        Moment old = new Moment(CELL);
        old.rig.channels().forEach(channel -> old.old(channel, 9 * SECOND));
        assertThat(old.look(32).found()).isTrue();
        Moment absurd = new Moment(CELL);
        absurd.rig.channels().forEach(channel -> absurd.set(channel, Double.NaN));
        assertThat(absurd.look(33).found()).isTrue();
    }

    @Test
    void a_channel_is_unreliable_from_a_doubt_of_thirty_on() {
        Moment moment = new Moment(CELL);
        int room = CELL.channel(Role.ROOM).index();
        moment.unsure[room] = 29;
        assertThat(moment.look(36).found()).isFalse();
        moment.unsure[room] = 30;
        assertThat(moment.look(36)).isEqualTo(new Breach(room, 30, 30));
    }

    @Test
    void while_one_device_works_every_other_is_off() {
        assertThat(new Moment(CELL).flowing(SINK, 20, SECOND).set(Role.SINK_ON, 1).look(35).found()).isFalse();
        assertThat(new Moment(CELL).flowing(SINK, 20, SECOND).set(Role.SOURCE_ON, 1).look(35).found()).isTrue();
        assertThat(new Moment(CELL).flowing(0, 20, SECOND).set(Role.SINK_ON, 1).look(35).found()).isTrue();
        assertThat(new Moment(PACK).flowing(2, 75, SECOND).set(Role.SINK_ON, 1).look(35).found()).as("of a device that says nothing").isTrue();
    }

    @Test
    void a_contact_that_lets_go_too_soon_is_told_in_seconds() {
        Breach breach = new Moment(CELL).at(Closing.SILENCE, 0, 200_000_000L, SECOND).set(Role.FEEDBACK, 0).look(49);
        assertThat(breach.value()).isCloseTo(0.2, within(1e-12));
        assertThat(breach.limit()).isCloseTo(0.3, within(1e-12));
    }

    @Test
    void a_dead_source_is_held_against_the_pack_as_far_as_that_is_seen() {
        Moment dead = new Moment(PACK).at(Closing.NO_LOAD, 0, 41 * SECOND, 41 * SECOND);
        assertThat(dead.look(18).limit()).isCloseTo(26.4, within(0.01));
        assertThat(dead.failed(Role.PACK_VOLTS).look(18).limit()).isZero();
    }

    /** Out of the sink, the bus no longer tied to the pack, an ampere and more in the scan before. */
    private static Moment lost(double amps, double before, double ordered) {
        Moment moment = new Moment(PACK).flowing(SINK, 20, 100 * SECOND).before(m -> m).ordered(ordered, ordered, 100 * SECOND);
        moment.last = moment.set(Role.CURRENT, before).scan();
        return moment.set(Role.CURRENT, amps).set(Role.BUS_VOLTS, 10);
    }

    @Test
    void a_path_is_lost_at_its_figures() {
        assertThat(lost(0.5, -20, 20).look(16).found()).isTrue();
        assertThat(lost(-1, -20, 20).look(16).found()).as("an ampere flows").isFalse();
        assertThat(lost(Math.nextDown(1.0), 1, 2).look(16).found()).as("2 A ordered, 1 A before").isTrue();
        assertThat(lost(0, -20, Math.nextDown(2.0)).look(16).found()).as("less ordered").isFalse();
        assertThat(lost(0, Math.nextDown(1.0), 20).look(16).found()).as("nothing new, tied before").isFalse();
        assertThat(lost(0, -20, 20).flowedAgo(101 * SECOND).look(16).found()).as("nothing flowed in this path").isFalse();
        assertThat(lost(0, -20, 20).flowedAgo(101 * SECOND - 1).look(16).found()).isTrue();
        assertThat(lost(0, -20, 20).before(m -> m.failed(Role.CELL_VOLTS)).look(16).found()).as("no cell was seen at an edge").isTrue();
        assertThat(lost(0, -20, 20).before(m -> m.set(Role.CELL_VOLTS, 2.5)).look(16).found()).as("the protection's doing").isFalse();
    }

    /** A path of thin cables drops so much that bus and pack differ under every current: one false zero of the shunt must not end the night. */
    @Test
    void one_false_reading_of_no_current_is_no_lost_path_while_the_bus_stays_where_it_was() {
        Moment dropping = new Moment(PACK).flowing(SINK, 20, 100 * SECOND).ordered(20, 20, 100 * SECOND).set(Role.BUS_VOLTS, 25.9);
        dropping.last = dropping.set(Role.CURRENT, -20).scan();

        assertThat(dropping.set(Role.CURRENT, 0).look(16).found()).as("for the first time").isFalse();
        dropping.last = dropping.scan();
        assertThat(dropping.look(16).found()).as("again").isTrue();
    }

    @Test
    void voltage_lost_on_the_way_is_judged_from_an_ampere_on_and_says_which_way() {
        Moment losing = new Moment(PACK).flowing(SINK, 20, 100 * SECOND).set(Role.BUS_VOLTS, 25).set(Role.CURRENT, -20);
        double unsure = PACK.channel(Role.PACK_VOLTS).uncertainty(26.4) + PACK.channel(Role.BUS_VOLTS).uncertainty(25);

        Breach breach = losing.look(57);

        assertThat(breach.value()).isCloseTo(-1.4, within(0.01));
        assertThat(breach.limit()).isCloseTo(0.1 + 2 * 0.003 * 20 + unsure, within(0.001));
        assertThat(losing.set(Role.CURRENT, -1.01).look(57).found()).isTrue();
        assertThat(losing.set(Role.CURRENT, -1).look(57).found()).as("an ampere").isTrue();
        Moment quarter = new Moment(PACK).flowing(SINK, 25, 100 * SECOND).set(Role.PACK_VOLTS, 26).set(Role.CURRENT, -25);
        assertThat(quarter.set(Role.BUS_VOLTS, 25.75).look(57).found()).as("0.1 V and 6 mohm x 25 A to the bit").isFalse();
        assertThat(quarter.set(Role.BUS_VOLTS, Math.nextDown(25.75)).look(57).found()).isTrue();
        assertThat(losing.set(Role.CURRENT, -0.99).look(57).found()).as("no current: what the bus does then is rule 16's").isFalse();
    }

    @Test
    void a_median_of_eight_is_between_the_fourth_and_the_fifth() {
        Moment moment = new Moment(PACK);
        for (int cell = 1; cell <= 8; cell++) {
            moment.set("cell_0" + cell + "_v", cell);
        }
        assertThat(moment.view().median(moment.places.cells)).isEqualTo(4.5);
    }

    @Test
    void limits_of_warmth_are_printed_as_whole_figures_with_a_true_minus() {
        assertThat(Rules.of(PACK)).filteredOn(rule -> rule.number() == 21 || rule.number() == 22).extracting(Rule::limit)
                .containsExactly("45 °C charging, 55 °C else", "2 °C charging, −10 °C else");
    }

    @Test
    void a_shunt_and_a_device_that_are_apart_say_what_the_device_shows_and_what_it_might_have() {
        Moment apart = new Moment(CELL).flowing(0, 20, 100 * SECOND).set(Role.CURRENT, 20).set(Role.SOURCE_AMPS, 30);
        double unsure = 0.05 * 30 + 0.5 + CELL.channel(Role.CURRENT).uncertainty(20) + CELL.column("source_a").orElseThrow().uncertainty(30);
        assertThat(apart.look(38).value()).isCloseTo(30, within(0.01));
        assertThat(apart.look(38).limit()).as("more").isCloseTo(20 + unsure, within(0.01));

        Breach less = apart.set(Role.SOURCE_AMPS, 10).look(38);
        double then = 0.05 * 20 + 0.5 + CELL.channel(Role.CURRENT).uncertainty(20) + CELL.column("source_a").orElseThrow().uncertainty(10);
        assertThat(less.limit()).as("less").isCloseTo(20 - then, within(0.01));
    }

    @Test
    void a_shunt_and_a_device_may_differ_by_their_share_to_the_bit_and_by_the_uncertainty_of_each() {
        Moment exact = new Moment(CELL).flowing(0, 10, 100 * SECOND).set(Role.SOURCE_AMPS, 10);
        assertThat(exact.set(Role.CURRENT, 9).look(38).found()).as("5 % of 10 A and 0.5 A").isFalse();
        assertThat(exact.set(Role.CURRENT, Math.nextDown(9.0)).look(38).found()).isTrue();

        Rig doubted = CELL.with(CELL.channels().stream().map(c -> c.role() == Role.CURRENT ? unsure(c, 0.25)
                : c.role() == Role.SOURCE_AMPS ? unsure(c, 0.5) : c).toList());
        Moment apart = new Moment(doubted).flowing(0, 10, 100 * SECOND).set(Role.SOURCE_AMPS, 10);
        assertThat(apart.set(Role.CURRENT, 8.25).look(38).found()).as("and 0.25 A and 0.5 A").isFalse();
        assertThat(apart.set(Role.CURRENT, Math.nextDown(8.25)).look(38).found()).isTrue();
    }

    private static Channel unsure(Channel c, double offsetU) {
        return new Channel(c.index(), c.name(), c.role(), c.cell(), c.periodNanos(), c.scale(), c.shift(), 0, offsetU, c.lowest(),
                c.highest(), c.lagSeconds());
    }

    @Test
    void rules_are_known_by_their_number_and_listed_by_it() {
        assertThat(Rules.of(PACK)).extracting(Rule::number).isSorted().doesNotHaveDuplicates();
        assertThat(Rules.ofWishes()).extracting(Rule::number).containsExactly(61, 62, 63);
        Rule first = Rules.of(PACK).getFirst();
        assertThat(first).isEqualTo(Rules.of(CELL).getFirst()).isNotEqualTo(Rules.of(PACK).get(1)).isNotEqualTo("1");
        assertThat(first).hasToString("1 cell high").hasSameHashCodeAs(Rules.of(CELL).getFirst());
        assertThat(Rules.of(PACK)).extracting(Rule::hashCode).as("spread in a table").doesNotHaveDuplicates();
        assertThat(Rules.of(PACK)).filteredOn(rule -> List.of(7, 19, 21).contains(rule.number())).extracting(Rule::holdNanos)
                .as("a notice's, a weld's, a warmth's").containsExactly(60 * SECOND, 300_000_000L, SECOND);
        assertThat(Clearing.PROOF.words()).isEqualTo("a passed contactor proof");
    }
}
