package rigwarden.bench;

import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.loop.Clock;
import rigwarden.rig.Channel;
import rigwarden.warden.Failure;

/** One converter and its taps. All such chips convert at the same time, one tap each in a round. */
final class TapChip {
    /**
     * One tap.
     *
     * @param channel where its reading goes
     * @param input of the chip
     * @param turn scans in which it is read
     */
    record Tap(Channel channel, int input, Turn turn) {}

    private final TapConverter chip;
    private final List<Tap> taps;
    private final Clock clock;
    private final Table table;
    private final Reference reference;
    private boolean running;
    private long ready;

    TapChip(TapConverter chip, List<Tap> taps, Clock clock, Table table, Reference reference) {
        this.chip = chip;
        this.taps = List.copyOf(taps);
        this.clock = clock;
        this.table = table;
        this.reference = reference;
    }

    int rounds() {
        return taps.size();
    }

    void start(int round, long scan) {
        running = false;
        if (round >= taps.size() || !taps.get(round).turn().isDue(scan)) {
            return;
        }
        Tap tap = taps.get(round);
        try {
            chip.start().at(tap.input());
            ready = clock.nanos() + chip.conversionNanos().getAsLong();
            running = true;
        } catch (BusFailure e) {
            table.failed(tap.channel(), e.why());
        } catch (RuntimeException e) {
            table.failed(tap.channel(), Failure.NONSENSE);
        }
    }

    void finish(int round, long scan) {
        if (running) {
            Tap tap = taps.get(round);
            clock.sleepUntil(ready);
            table.measure(tap.channel(), () -> {
                reference.check(scan);
                return chip.finish().at(tap.input());
            });
        }
    }
}
