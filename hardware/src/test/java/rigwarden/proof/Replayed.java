package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import rigwarden.logbook.Broken;
import rigwarden.logbook.Logbook;
import rigwarden.run.LeftOff;

/** What a process left behind when it died, put through the core once more. */
final class Replayed {
    private Replayed() {}

    /** That the first run of a logbook, which {@link KilledRehearsal} began, gives the orders that are stored with it. */
    static void toTheSameOrders(Logbook book) {
        LeftOff left = Broken.read(book.runs().getFirst(), book.runs(), book.file(1), Bench.rig(), Bench.night());
        assertThat(left.fault()).as("replays to the stored orders").isEqualTo(Optional.empty());
    }
}
