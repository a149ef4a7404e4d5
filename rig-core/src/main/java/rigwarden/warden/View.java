package rigwarden.warden;

import java.util.Arrays;
import rigwarden.rig.Channel;

/** One scan with what was remembered, as a rule sees it. */
public final class View {
    private final Places places;
    private final Scan scan;
    private final Memory memory;
    private final Reading[] readings;
    private boolean anyFailed;
    private boolean anyStale;
    private boolean anyImplausible;

    View(Places places, Scan scan, Reading[] readings, Memory memory) {
        this.places = places;
        this.scan = scan;
        this.memory = memory;
        this.readings = readings;
        inspect();
    }

    /** One pass over all channels, so that the rules that look at every channel need not do so on a good scan. */
    private void inspect() {
        Channel[] all = places.all;
        long now = scan.nanos();
        for (int i = 0; i < readings.length; i++) {
            switch (readings[i]) {
                case Reading.Valid valid -> {
                    anyStale |= now - valid.takenNanos() > places.staleNanos[i];
                    anyImplausible |= !all[i].plausible(valid.value());
                }
                case Reading.Failed _ -> anyFailed = true;
            }
        }
    }

    boolean anyFailed() {
        return anyFailed;
    }

    boolean anyStale() {
        return anyStale;
    }

    boolean anyImplausible() {
        return anyImplausible;
    }

    Places places() {
        return places;
    }

    Scan scan() {
        return scan;
    }

    long nanos() {
        return scan.nanos();
    }

    Reading reading(Channel channel) {
        return readings[channel.index()];
    }

    boolean valid(Channel channel) {
        return reading(channel) instanceof Reading.Valid;
    }

    /** Value of a valid reading; ask {@link #valid} first. */
    double value(Channel channel) {
        return ((Reading.Valid) reading(channel)).value();
    }

    /** Median of this scan's and the two earlier readings, as far as they are valid. */
    double median3(Channel channel) {
        double now = value(channel);
        double last = past(memory.last(), channel, now);
        double earlier = past(memory.earlier(), channel, last);
        return Math.max(Math.min(now, last), Math.min(Math.max(now, last), earlier));
    }

    /** What a channel read in the last scan; the value given where it was not valid. */
    double last(Channel channel, double otherwise) {
        return past(memory.last(), channel, otherwise);
    }

    /** Median of these channels in this scan; all must be valid. */
    double median(Channel[] channels) {
        double[] sorted = new double[channels.length];
        for (int i = 0; i < channels.length; i++) {
            sorted[i] = value(channels[i]);
        }
        Arrays.sort(sorted);
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }

    boolean allValid(Channel[] channels) {
        for (Channel channel : channels) {
            if (!valid(channel)) {
                return false;
            }
        }
        return true;
    }

    static double past(Scan scan, Channel channel, double otherwise) {
        return channel.index() < scan.readings().size()
                        && scan.readings().get(channel.index()) instanceof Reading.Valid valid
                ? valid.value()
                : otherwise;
    }

    Memory memory() {
        return memory;
    }

    boolean energised() {
        return memory.inForce().energised();
    }

    boolean energised(Way way) {
        return energised() && memory.inForce().way() == way;
    }

    boolean at(Closing stage) {
        return energised() && memory.inForce().stage() == stage;
    }

    /** How long this stage, or Off, has been in force. */
    long stageNanos() {
        return nanos() - memory.inForce().sinceNanos();
    }

    /** Whether a switch reads on; a switch without a valid reading reads as neither, and its failure is another rule's. */
    boolean on(Channel channel) {
        return valid(channel) && value(channel) > 0.5;
    }

    boolean off(Channel channel) {
        return valid(channel) && value(channel) <= 0.5;
    }
}
