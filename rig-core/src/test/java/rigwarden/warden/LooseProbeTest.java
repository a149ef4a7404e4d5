package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** The probe that a person carries about: whatever it says, or does not say, nothing trips. */
class LooseProbeTest {
    private static final List<Rig> RIGS = List.of(TestRigs.withLoose(TestRigs.oneCell()), TestRigs.withLoose(TestRigs.eightCells()));
    private static final int SINK = 1;
    private static final long SECOND = Moment.SECOND;

    @Test
    void no_rule_that_trips_reads_it() {
        for (Rig rig : RIGS) {
            assertThat(Rules.of(rig)).filteredOn(rule -> rule.reads().contains(Role.LOOSE))
                    .extracting(Rule::number, Rule::severity).containsExactly(tuple(58, Severity.WARNS));
            assertThat(new Places(rig).own).extracting(Channel::role).doesNotContain(Role.LOOSE);
            assertThat(new Places(rig).temperatures).extracting(Channel::role).doesNotContain(Role.LOOSE);
        }
    }

    @Test
    void it_is_no_joint_and_no_like_of_any() {
        Places places = new Places(RIGS.getLast());

        assertThat(places.joints).extracting(Channel::role).doesNotContain(Role.LOOSE);
        assertThat(places.warmed).extracting(Channel::role).doesNotContain(Role.LOOSE);
        assertThat(places.bodies).hasSize(8);
    }

    @Test
    void a_rig_without_one_has_no_rule_about_it() {
        assertThat(Rules.of(TestRigs.eightCells())).extracting(Rule::number).doesNotContain(58);
    }

    /** Open, old, absurd, hot, cold and jumping, in turn, for ten minutes at rest and ten under current. */
    @Test
    void whatever_it_reads_the_bench_stays_healthy_and_what_it_fails_to_say_is_a_notice() {
        for (Rig rig : RIGS) {
            for (boolean flows : new boolean[] {false, true}) {
                Random chance = new Random(58);
                Walk walk = new Walk(rig);
                Wish wish = Wish.NOTHING;
                if (flows) {
                    wish = walk.reach(SINK, Closing.CURRENT, 20, 10);
                } else {
                    walk.start();
                }

                for (int i = 0; i < 30; i++) {
                    int kind = i % 5;
                    walk.healthy(20, wish, scans -> strange(rig, scans, kind, chance));
                }

                assertThat(walk.told).extracting(warning -> warning.rule().number()).contains(58).containsOnly(58);
            }
        }
    }

    private static Scans strange(Rig rig, Scans scans, int kind, Random chance) {
        Channel loose = rig.channel(Role.LOOSE);
        return switch (kind) {
            case 0 -> scans.set(loose, 22 + 60 * chance.nextDouble());
            case 1 -> scans.failed(loose, Failure.OPEN, Math.max(0, scans.nanos() - chance.nextInt(60) * SECOND));
            case 2 -> scans.set(loose, chance.nextBoolean() ? -270 : 1372);
            case 3 -> scans.old(loose, chance.nextInt(100) * SECOND);
            default -> scans.set(loose, chance.nextBoolean() ? 22 : 90);
        };
    }

    @Test
    void a_loose_end_is_told_after_ten_seconds_and_an_absurd_reading_at_once() {
        Rig rig = RIGS.getFirst();
        Channel loose = rig.channel(Role.LOOSE);
        assertThat(new Moment(rig).failed(loose, 10 * SECOND - 1).look(58)).isEqualTo(Breach.NONE);
        assertThat(new Moment(rig).failed(loose, 10 * SECOND).look(58).channel()).isEqualTo(loose.index());
        assertThat(new Moment(rig).old(loose, 10 * SECOND + loose.periodNanos() - 1).look(58)).isEqualTo(Breach.NONE);
        assertThat(new Moment(rig).old(loose, 10 * SECOND + loose.periodNanos()).look(58).found()).isTrue();
        assertThat(new Moment(rig).failed(loose, 12 * SECOND).look(58)).as("in seconds").isEqualTo(new Breach(loose.index(), 12e9 * 1e-9, 1e10 * 1e-9));
        assertThat(new Moment(rig).old(loose, 12 * SECOND).look(58)).as("in seconds").isEqualTo(new Breach(loose.index(), 12e9 * 1e-9, 1e10 * 1e-9));
        assertThat(new Moment(rig).set(loose, 125.5).look(58).limit()).isEqualTo(125);
        assertThat(new Moment(rig).set(loose, -41).look(58).limit()).isEqualTo(-40);
        assertThat(new Moment(rig).set(loose, 124).look(58)).isEqualTo(Breach.NONE);
    }
}
