package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.warden.Inbox;
import rigwarden.warden.Request;

class DeskTest {
    private final Desk desk = new Desk();

    @Test
    void an_empty_desk_costs_nothing_and_says_nothing() {
        assertThat(desk.get()).isSameAs(Inbox.EMPTY);
    }

    @Test
    void a_stop_gets_through_a_desk_that_is_full_of_requests() {
        while (desk.ask(Request.CLEAR)) {
            assertThat(desk).isNotNull();
        }

        desk.stop();
        Inbox taken = desk.get();

        assertThat(taken.stop()).isTrue();
        assertThat(taken.requests()).hasSize(8);
    }

    @Test
    void each_stop_and_each_request_is_taken_once_and_in_order() {
        desk.ask(Request.CLEAR);
        desk.ask(Request.START);
        desk.stop();

        Inbox first = desk.get();

        assertThat(first).isEqualTo(new Inbox(true, List.of(Request.CLEAR, Request.START)));
        assertThat(desk.get()).isSameAs(Inbox.EMPTY);
    }
}
