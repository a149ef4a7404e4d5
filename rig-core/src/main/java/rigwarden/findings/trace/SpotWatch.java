package rigwarden.findings.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Minute.Bin;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;
import rigwarden.rig.Traced;

/**
 * Attributes the loose probe's readings to the spots that were told. What it read while it settled, while a hand was on it and
 * after it fell is left out; of each stay under one current its last settled minute is kept.
 */
public final class SpotWatch {
    private static final int MOST_BINS = 6;
    private static final int LEAST_BINS = 3;
    private static final int LEAST_ZEROS = 10;
    /** A person tells a little before or after the bead is laid down: so many bins of either end are not of the spot (project's assumption). */
    private static final int HAND_BINS = 2;
    /** After so many of its time constants a bead is within 1 % of its place. */
    private static final double LAGS = 5;
    /** Nothing that carries a steady current moves so far in half a minute, K: 4 K/min is more than a trip allows after the first minutes. */
    private static final double JUMP_K = 2;
    private static final int JUMP_BINS = 3;
    /** Mean squares within this of each other are the same current, relative. */
    private static final double SAME_SQUARE = 0.2;
    private static final double LEAST_SQUARE = 1;
    /** A joint that begins to warm or to cool moves fast; later a jump is a jump. */
    private static final long ONSET_NANOS = 300_000_000_000L;
    /** More than anybody makes in a night. */
    private static final int MOST_VISITS = 256;

    private final long settlesNanos;
    private final List<Channel> warm;
    private final Minute minute;
    private final List<Bin> bins = new ArrayList<>();
    private final List<Visit> visits = new ArrayList<>();
    private final double[] zeroSums;
    private final int[] zeros;
    private boolean flowed;
    private Optional<Spot> spot = Optional.empty();
    private long settledNanos;
    private long steadyNanos;
    private long flowingNanos = -1;
    private double square;
    private int step;

    public SpotWatch(Traced rig, List<Channel> warm) {
        this.warm = warm;
        settlesNanos = Math.round(LAGS * rig.possible(Role.LOOSE).map(Channel::lagSeconds).orElse(0.0) * 1e9);
        minute = new Minute(warm.size());
        zeroSums = new double[warm.size()];
        zeros = new int[warm.size()];
    }

    public void take(Numbers now) {
        zero(now);
        minute.take(now).ifPresent(this::take);
    }

    /** Before any current of the run everything is as warm as the room. */
    private void zero(Numbers now) {
        flowed |= now.amps * now.amps >= LEAST_SQUARE;
        if (!flowed && !Double.isNaN(now.amps) && !Double.isNaN(now.loose)) {
            for (int i = 0; i < zeros.length; i++) {
                if (!Double.isNaN(now.celsius[i])) {
                    zeroSums[i] += now.loose - now.celsius[i];
                    zeros[i]++;
                }
            }
        }
    }

    private void take(Bin bin) {
        if (Double.isNaN(bin.squareAmps())) {
            return;
        }
        current(bin);
        if (Double.isNaN(bin.loose())) {
            return;
        }
        if (spot.isEmpty() || bin.beganNanos() < settledNanos) {
            return;
        }
        if (jumped(bin)) {
            close(JUMP_BINS - 1, true, true);
            spot = Optional.empty();
            return;
        }
        bins.add(bin);
        if (bins.size() > MOST_BINS + JUMP_BINS) {
            bins.removeFirst();
        }
    }

    /** Another current is another stay: joints follow it within minutes. */
    private void current(Bin bin) {
        double now = bin.squareAmps();
        boolean same = Math.abs(now - square) <= SAME_SQUARE * Math.max(now, square) || Math.max(now, square) < LEAST_SQUARE;
        if (!same) {
            close(0, false, false);
            settledNanos = Math.max(settledNanos, bin.endedNanos() + settlesNanos);
            steadyNanos = bin.endedNanos();
        }
        square = now;
        boolean flows = now >= LEAST_SQUARE;
        flowingNanos = !flows ? -1 : flowingNanos < 0 ? bin.beganNanos() : flowingNanos;
    }

    private boolean jumped(Bin bin) {
        return bins.size() >= JUMP_BINS && bin.endedNanos() - steadyNanos > ONSET_NANOS
                && Math.abs(bin.loose() - bins.get(bins.size() - JUMP_BINS).loose()) > JUMP_K;
    }

    /** Somebody says where it lies from now on. */
    public void laid(Spot on, Numbers now) {
        close(HAND_BINS, true, false);
        spot = Optional.of(on);
        settledNanos = now.nanos + HAND_BINS * Minute.SPAN_NANOS + settlesNanos;
    }

    public void begun(int number) {
        close(0, false, false);
        step = number;
    }

    public void over() {
        close(0, false, false);
        step = 0;
    }

    /** All stays, the one that goes on included as far as it went. */
    public List<Visit> end() {
        close(0, false, false);
        return List.copyOf(visits);
    }

    /** Ends a stay; without its last bins, and said even when nothing of it is left. */
    private void close(int drop, boolean said, boolean fell) {
        int last = bins.size() - drop;
        if (spot.isPresent() && visits.size() < MOST_VISITS) {
            if (last >= LEAST_BINS) {
                visits.add(visit(spot.get(), bins.subList(Math.max(0, last - MOST_BINS), last), fell));
            } else if (said && visits.stream().noneMatch(v -> v.spot().equals(spot.get()) && v.settled())) {
                visits.add(new Visit(spot.get(), step, Double.NaN, Double.NaN, Double.NaN, square, 0, 0, fell, 0, 0));
            }
        }
        bins.clear();
    }

    private Visit visit(Spot on, List<Bin> stay, boolean fell) {
        int[] reference = reference(on);
        double[] over = stay.stream().mapToDouble(bin -> bin.loose() - mean(bin.celsius(), reference)).toArray();
        double hours = (stay.getLast().endedNanos() - stay.getFirst().endedNanos()) / 3600e9;
        double[] zero = new double[zeroSums.length];
        Arrays.setAll(zero, i -> zeros[i] < LEAST_ZEROS ? Double.NaN : zeroSums[i] / zeros[i]);
        return new Visit(on, step, stay.stream().mapToDouble(Bin::loose).average().orElseThrow(), Arrays.stream(over).average().orElseThrow(),
                mean(zero, reference), stay.stream().mapToDouble(Bin::squareAmps).average().orElseThrow(),
                (over[over.length - 1] - over[0]) / hours,
                flowingNanos < 0 ? 0 : (stay.getLast().endedNanos() - flowingNanos) / 3600e9, fell, stay.getFirst().firstScan(),
                stay.getLast().lastScan());
    }

    private static double mean(double[] values, int[] of) {
        return Arrays.stream(of).mapToDouble(i -> values[i]).average().orElse(Double.NaN);
    }

    /** A joint over its own cells, everything else over the room. */
    private int[] reference(Spot on) {
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < warm.size(); i++) {
            Channel channel = warm.get(i);
            boolean own = channel.cell() == on.cell() || on.part() == Spot.Part.BAR && channel.cell() == on.cell() + 1;
            if (on.joint() ? channel.role() == Role.BODY && own : channel.role() == Role.ROOM) {
                places.add(i);
            }
        }
        return places.stream().mapToInt(Integer::intValue).toArray();
    }
}
