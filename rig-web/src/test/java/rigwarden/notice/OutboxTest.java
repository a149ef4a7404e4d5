package rigwarden.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What waits on one way. */
class OutboxTest {
    private final Outbox outbox = new Outbox();

    private List<String> titles() {
        List<String> titles = new ArrayList<>();
        while (outbox.first().isPresent()) {
            Notice first = outbox.first().orElseThrow();
            titles.add(first.title());
            outbox.sent(first);
        }
        return titles;
    }

    @Test
    void notices_leave_in_the_order_in_which_they_came() {
        outbox.put(Some.notice(What.WARNED, "first"));
        outbox.put(Some.notice(What.INTERRUPTED, "second"));
        outbox.put(Some.notice(What.DONE, "third"));

        assertThat(titles()).containsExactly("first", "second", "third");
    }

    @Test
    void a_check_in_that_did_not_arrive_is_replaced_by_the_next_one() {
        outbox.put(Some.notice(What.CHECK_IN, "at one"));
        outbox.put(Some.notice(What.TRIPPED, "trip"));
        outbox.put(Some.notice(What.CHECK_IN, "at two"));

        assertThat(titles()).containsExactly("trip", "at two");
        assertThat(outbox.dropped()).isZero();
    }

    @Test
    void a_night_without_network_fills_a_bounded_box_and_the_trip_stays_in_it() {
        outbox.put(Some.notice(What.TRIPPED, "the trip"));
        for (int i = 0; i < 1000; i++) {
            outbox.put(Some.notice(What.WARNED, "warning " + i));
        }

        assertThat(outbox.size()).isEqualTo(Outbox.MOST);
        assertThat(outbox.dropped()).isEqualTo(1001 - Outbox.MOST);
        assertThat(titles()).startsWith("the trip").endsWith("warning 999");
    }

    @Test
    void without_a_warning_to_lose_the_oldest_is_lost() {
        for (int i = 0; i < Outbox.MOST + 1; i++) {
            outbox.put(Some.notice(What.INTERRUPTED, "cut " + i));
        }

        assertThat(titles()).startsWith("cut 1").hasSize(Outbox.MOST);
    }

    @Test
    void a_notice_that_was_refused_lets_the_others_go_first() {
        Notice refused = Some.notice(What.WARNED, "refused");
        outbox.put(refused);
        outbox.put(Some.notice(What.TRIPPED, "trip"));

        outbox.back(refused);

        assertThat(titles()).containsExactly("trip", "refused");
    }
}
