package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** A cell that was found nearly dead: no usual start, and hardly any current with the start that is meant for it. */
class RecoveryTest {
    private static final Rig RIG = TestRigs.oneCell();
    private final Warden warden = new Warden(RIG);
    private Guard guard = warden.fresh(0);
    private long number;

    private Verdict scan(double volts, Inbox inbox) {
        number++;
        Scans scans = new Scans(RIG, number * TestRigs.SCAN_NANOS).set(Role.CELL_VOLTS, volts).set(Role.PACK_VOLTS, volts);
        Judged judged = warden.judge(guard, scans.scan(number), Orders.OFF, inbox);
        guard = judged.guard();
        return judged.verdict();
    }

    private Verdict scans(double volts) {
        Verdict last = scan(volts, Inbox.EMPTY);
        for (int i = 0; i < 20; i++) {
            last = scan(volts, Inbox.EMPTY);
        }
        return last;
    }

    @Test
    void a_low_cell_that_nobody_wants_to_charge_trips_nothing() {
        assertThat(scans(2.2)).isInstanceOf(Verdict.Healthy.class);
    }

    @Test
    void a_usual_start_with_a_low_cell_trips() {
        scan(2.2, Inbox.of(Request.START));

        assertThat(scans(2.2)).isInstanceOfSatisfying(Verdict.Unhealthy.class,
                unhealthy -> assertThat(unhealthy.first().rule().number()).isEqualTo(2));
    }

    @Test
    void a_start_that_recovers_allows_a_twentieth_of_the_capacity_an_hour() {
        scan(2.2, Inbox.of(Request.RECOVER));

        assertThat(scans(2.2)).isInstanceOfSatisfying(Verdict.Healthy.class,
                healthy -> assertThat(healthy.lease().ceilingAmps(Way.CHARGE)).isEqualTo(0.05 * 105));
    }

    @Test
    void under_two_volts_nothing_is_recovered() {
        scan(1.9, Inbox.of(Request.RECOVER));

        assertThat(scans(1.9)).isInstanceOfSatisfying(Verdict.Unhealthy.class,
                unhealthy -> assertThat(unhealthy.first().rule().number()).isEqualTo(3));
    }

    @Test
    void without_that_start_a_low_cell_gets_no_charge_at_all() {
        assertThat(scans(2.44)).isInstanceOfSatisfying(Verdict.Healthy.class,
                healthy -> assertThat(healthy.lease().ceilingAmps(Way.CHARGE)).isZero());
    }
}
