package rigwarden.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.warden.Failure;

class ReferenceTest {
    private int looks;
    private boolean wrong;
    private final Reference reference = new Reference(this::look, 100_000_000L, 3);

    private void look() throws BusFailure {
        looks++;
        if (wrong) {
            throw new BusFailure(Failure.NONSENSE, "another chip");
        }
    }

    private void scans(long from, long to) throws BusFailure {
        for (long scan = from; scan < to; scan++) {
            reference.check(scan);
        }
    }

    @Test
    void it_is_read_anew_every_hundred_scans_in_the_turn_of_its_chip() throws BusFailure {
        scans(1, 103);
        assertThat(looks).isZero();
        scans(103, 104);
        assertThat(looks).isEqualTo(1);
        scans(104, 1103);
        assertThat(looks).isEqualTo(10);
    }

    @Test
    void ten_seconds_are_ten_seconds_whatever_the_scan() throws BusFailure {
        Reference slow = new Reference(this::look, 200_000_000L, 0);
        for (long scan = 1; scan <= 500; scan++) {
            slow.check(scan);
        }
        assertThat(looks).as("in a hundred seconds").isEqualTo(10);
    }

    @Test
    void what_is_wrong_is_looked_at_in_each_scan_until_it_is_right_again() throws BusFailure {
        wrong = true;
        for (long scan = 103; scan < 113; scan++) {
            long now = scan;
            assertThatThrownBy(() -> reference.check(now)).isInstanceOf(BusFailure.class);
        }
        wrong = false;
        scans(113, 213);
        assertThat(looks).as("ten that failed, one that did not, then no other for a hundred").isEqualTo(11);
    }
}
