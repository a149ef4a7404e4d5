package rigwarden.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** One way and its courier; attempts are made by hand, so that no test waits. */
class CourierTest {
    private static final Delivery DOWN = new Delivery.Failed("connection refused", false);

    private final TestRoute route = new TestRoute();
    private final List<String> terminal = Collections.synchronizedList(new ArrayList<>());
    private final Courier courier = new Courier(route, InstantSource.fixed(Some.NOON), terminal::add);

    @Test
    void a_way_that_is_down_is_tried_with_growing_waits_up_to_ten_minutes() {
        route.end = _ -> DOWN;
        courier.offer(Some.notice(What.TRIPPED, "trip"));

        List<Long> seconds = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            seconds.add(TimeUnit.NANOSECONDS.toSeconds(courier.attempt()));
        }

        assertThat(seconds).containsExactly(5L, 10L, 20L, 40L, 80L, 160L, 320L, 600L, 600L, 600L);
    }

    @Test
    void when_it_is_back_what_waited_arrives_once_and_the_waits_begin_anew() {
        route.end = _ -> DOWN;
        courier.offer(Some.notice(What.TRIPPED, "trip"));
        courier.attempt();
        courier.attempt();
        route.end = _ -> new Delivery.Delivered("taken");
        courier.attempt();
        courier.attempt();

        assertThat(route.sent).containsExactly("trip", "trip", "trip");
        assertThat(courier.standing().troubled()).isFalse();

        route.end = _ -> DOWN;
        courier.offer(Some.notice(What.DONE, "done"));
        assertThat(courier.attempt()).isEqualTo(Courier.FIRST_WAIT_NANOS);
    }

    @Test
    void a_failure_is_told_once_on_the_terminal_and_stands_for_the_page_until_it_is_over() {
        route.end = _ -> DOWN;
        courier.offer(Some.notice(What.TRIPPED, "trip"));
        courier.attempt();
        courier.attempt();

        assertThat(terminal).hasSize(1).first().asString().contains("NOT DELIVERED", "phone", "trip", "connection refused");
        assertThat(courier.standing().words()).contains("NOT delivered, 2 attempts: connection refused", "1 waiting");

        route.end = _ -> new Delivery.Delivered("taken");
        courier.attempt();
        assertThat(terminal.getLast()).isEqualTo("Notices arrive again by phone.");
        assertThat(courier.standing().words()).startsWith("phone: last delivered at");
    }

    @Test
    void a_notice_that_the_other_end_refuses_does_not_stop_the_next() {
        route.end = n -> n.title().equals("bad") ? new Delivery.Failed("answered 400", true) : new Delivery.Delivered("ok");
        courier.offer(Some.notice(What.DONE, "bad"));
        courier.offer(Some.notice(What.INTERRUPTED, "cut"));

        courier.attempt();
        courier.attempt();

        assertThat(route.sent).containsExactly("bad", "cut");
        assertThat(courier.standing().waiting()).isEqualTo(1);
    }

    @Test
    void a_trip_goes_before_everything_that_waits() {
        courier.offer(Some.notice(What.DONE, "done"));
        courier.offer(Some.notice(What.INTERRUPTED, "cut"));
        courier.offer(Some.notice(What.TRIPPED, "trip"));

        courier.attempt();

        assertThat(route.sent).containsExactly("trip");
    }

    @Test
    void a_defect_of_a_way_is_a_failure_like_another() {
        route.end = _ -> {
            throw new IllegalStateException("broken");
        };
        courier.offer(Some.notice(What.TRIPPED, "trip"));

        courier.attempt();

        assertThat(courier.standing().words()).contains("a defect of ours", "broken");
    }

    @Test
    void news_of_more_than_a_day_ago_is_given_up_and_counted() {
        courier.offer(Some.notice(What.TRIPPED, "old", Some.NOON.minus(Duration.ofHours(25))));

        assertThat(courier.attempt()).isZero();

        assertThat(route.sent).isEmpty();
        assertThat(courier.standing().dropped()).isEqualTo(1);
    }

    @Test
    void what_a_way_does_not_take_does_not_go_there() {
        courier.offer(Some.notice(What.WARNED, "warning"));

        courier.attempt();

        assertThat(route.sent).isEmpty();
    }

    @Test
    @Timeout(60)
    void handing_over_goes_on_while_the_way_hangs_for_ever() throws Exception {
        CountDownLatch hangs = new CountDownLatch(1);
        CountDownLatch never = new CountDownLatch(1);
        route.end = _ -> {
            hangs.countDown();
            awaited(never);
            return DOWN;
        };
        courier.start();
        courier.offer(Some.notice(What.TRIPPED, "trip"));
        hangs.await();

        for (int i = 0; i < 100_000; i++) {
            courier.offer(Some.notice(What.DONE, "done " + i));
        }

        assertThat(route.sent).containsExactly("trip");
        assertThat(courier.standing().waiting()).isEqualTo(Outbox.MOST);
        courier.close(1);
        assertThat(List.copyOf(terminal)).as("what waits is said, before or after the last try that fails").anyMatch(line -> line.contains("not delivered by phone"));
    }

    private static void awaited(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException _) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    @Timeout(60)
    void at_the_end_what_waits_is_tried_once_more_without_waiting() {
        courier.offer(Some.notice(What.TRIPPED, "trip"));
        courier.offer(Some.notice(What.CHECK_IN, "last"));
        courier.start();

        courier.close(TimeUnit.SECONDS.toNanos(30));

        assertThat(route.sent).containsExactly("trip", "last", "closed");
        assertThat(terminal).isEmpty();
    }
}
