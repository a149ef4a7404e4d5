package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** A rig whose shunt monitor sums nothing. */
class NoSecondSumTest {
    private static final Rig RIG = read();
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final long TEN_SECONDS = 10_000_000_000L;

    private final Walk walk = new Walk(RIG);

    private static Rig read() {
        return switch (RigFile.read(Path.of("..", "hardware", "rigs", "one-cell-spi.toml"))) {
            case Read.Sound<Rig> sound -> sound.value();
            case Read.Refused<Rig> refused -> throw new AssertionError(refused.refusals());
        };
    }

    /** Through a device at 21 A for so many hours, the last seconds at this voltage; then off. */
    private void flow(int through, double hours, double lastVolts) {
        walk.healthy(30, Wish.NOTHING);
        for (Closing stage : List.of(Closing.PRECHARGE, Closing.CONTACT)) {
            walk.healthy(1, walk.wish(through, stage, 0));
        }
        Wish wish = walk.wish(through, Closing.CURRENT, 21);
        walk.healthy(10, wish);
        walk.stride = TEN_SECONDS;
        walk.healthy(hours * 3600 - 40, wish);
        walk.healthy(30, wish, scans -> scans.set(Role.CELL_VOLTS, lastVolts).set(Role.PACK_VOLTS, lastVolts)
                .set(Role.BUS_VOLTS, lastVolts));
        walk.stride = RIG.scanNanos();
        walk.healthy(1, Wish.NOTHING);
    }

    /** Safety page, section 2: the warden's own count needs no chip's sum, and the trip names the current. */
    @Test
    void too_much_put_in_trips_all_the_same_and_names_the_current() {
        walk.scan(walk.next(), Inbox.of(Request.START), Wish.NOTHING);
        flow(SOURCE, 1, 3.58);
        flow(SINK, 2, 2.6);
        walk.healthy(30, Wish.NOTHING);
        for (Closing stage : List.of(Closing.PRECHARGE, Closing.CONTACT)) {
            walk.healthy(1, walk.wish(SOURCE, stage, 0));
        }
        Wish wish = walk.wish(SOURCE, Closing.CURRENT, 21);
        walk.healthy(10, wish);
        long began = walk.nanos;
        walk.stride = TEN_SECONDS;
        Verdict verdict = walk.scan(walk.next(), Inbox.EMPTY, wish);
        for (int i = 0; i < 2000 && verdict instanceof Verdict.Healthy; i++) {
            verdict = walk.scan(walk.next(), Inbox.EMPTY, wish);
        }

        assertThat(verdict).isInstanceOfSatisfying(Verdict.Unhealthy.class, unhealthy -> {
            assertThat(unhealthy.first().rule().number()).isEqualTo(9);
            assertThat(unhealthy.first().where()).isEqualTo(RIG.channel(Role.CURRENT));
        });
        assertThat((walk.nanos - began) / 3600e9).isCloseTo(1.05 * 2, within(0.02));
    }
}
