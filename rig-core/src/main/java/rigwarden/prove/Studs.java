package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.AT_REST;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** On which stud each tap sits, how many cells there are, and whether their sum is the pack's own voltage. */
final class Studs {
    private static final double LEAST_CELL_V = 2.0;
    private static final double MOST_CELL_V = 3.75;
    /** Of a cell: a tap further than this from every stud sits on none. */
    private static final double SNUG = 0.4;
    private static final String ORDER = "taps";

    private final Rig rig;
    private final Means means;
    private final List<Tap> taps = new ArrayList<>();
    private final double unit;

    /**
     * A tap as it reads.
     *
     * @param number of the cell on whose positive stud it should sit
     * @param ground stud of its island's ground
     * @param volts against that
     * @param end whether it reads the end of its range: what it sits on may be higher
     */
    private record Tap(Channel channel, int number, int ground, double volts, boolean end) {
        double seat(double unit) {
            return ground + volts / unit;
        }

        int near(double unit) {
            return (int) Math.round(seat(unit));
        }

        /** Nothing below its ground can be read. */
        boolean nothing(double unit) {
            return volts < SNUG * unit;
        }

        /** Whether it may sit on this stud: at either end of its range it may sit on any stud beyond. */
        boolean on(int stud, double unit) {
            if (nothing(unit)) {
                return stud <= ground;
            }
            return end ? stud > number || stud == number && volts < MOST_CELL_V * (number - ground) : near(unit) == stud;
        }
    }

    Studs(Rig rig, Means means) {
        this.rig = rig;
        this.means = means;
        List<Channel> own = rig.channels(Role.TAP_VOLTS);
        for (Channel channel : own.isEmpty() ? rig.channels(Role.CELL_VOLTS) : own) {
            if (means.seen(channel)) {
                double volts = means.mean(channel);
                taps.add(new Tap(channel, channel.cell(), ground(channel), volts, volts > channel.highest() - 2 * channel.scale()));
            }
        }
        unit = unit();
    }

    /** The stud below the lowest tap of the same chip. */
    private int ground(Channel channel) {
        var own = rig.inputs().stream().filter(i -> i.name().equals(channel.name())).findFirst().orElseThrow();
        return rig.inputs().stream()
                .filter(i -> i.bus() == own.bus() && i.address() == own.address() && i.role() != Role.BUS_VOLTS)
                .mapToInt(i -> i.cell()).min().orElse(1) - 1;
    }

    /** Voltage of the middle cell of those that can be one; swapped neighbours leave the others as they are. */
    private double unit() {
        List<Double> cells = new ArrayList<>();
        for (Tap tap : taps) {
            double below = tap(tap.number() - 1).filter(t -> t.ground() == tap.ground()).map(Tap::volts).orElse(0.0);
            double volts = Math.abs(tap.volts() - below);
            if (volts >= LEAST_CELL_V && volts <= MOST_CELL_V) {
                cells.add(volts);
            }
        }
        double[] sorted = cells.stream().mapToDouble(v -> v).sorted().toArray();
        double own = means.mean(rig.channel(Role.PACK_VOLTS)) / rig.cells().series();
        return sorted.length > 0 ? sorted[sorted.length / 2] : Math.clamp(Double.isNaN(own) ? 0 : own, LEAST_CELL_V, MOST_CELL_V);
    }

    private Optional<Tap> tap(int number) {
        return taps.stream().filter(t -> t.number() == number).findFirst();
    }

    List<Outcome> look() {
        List<Outcome> found = new ArrayList<>(order());
        Channel pack = rig.channel(Role.PACK_VOLTS);
        if (means.seen(pack)) {
            found.add(count(means.mean(pack)));
            if (found.stream().noneMatch(Outcome::spoils)) {
                found.add(sum(pack));
            }
        }
        return found;
    }

    private List<Outcome> order() {
        int turned = reversedCell();
        if (turned > 0) {
            return List.of(wrong("cell " + turned + " is reversed: its poles are the wrong way round in the string"));
        }
        List<Outcome> found = new ArrayList<>();
        for (Tap tap : taps) {
            if (!tap.on(tap.number(), unit)) {
                misplaced(tap).ifPresent(found::add);
            }
        }
        if (found.isEmpty()) {
            found.addAll(levels());
        }
        return found;
    }

    /** A cell whose tap, and every tap above it, sits two cells too low; 0 for none. */
    private int reversedCell() {
        for (Tap tap : taps) {
            boolean belowFit = taps.stream().filter(t -> t.number() < tap.number()).allMatch(t -> t.on(t.number(), unit));
            List<Tap> from = taps.stream().filter(t -> t.number() >= tap.number() && t.ground() == tap.ground()).toList();
            boolean lower = from.stream().allMatch(t -> Math.abs(t.seat(unit) - (t.number() - 2)) < SNUG && !t.nothing(unit));
            if (belowFit && lower && from.size() > 1) {
                return tap.number();
            }
        }
        return 0;
    }

    /** Two that sit in each other's place are named once, by the lower. */
    private Optional<Outcome> misplaced(Tap tap) {
        for (Tap other : taps) {
            boolean exchanged = other != tap && tap.on(other.number(), unit) && other.on(tap.number(), unit) && !other.on(other.number(), unit);
            if (exchanged) {
                return tap.number() < other.number()
                        ? Optional.of(wrong("tap " + tap.number() + " and tap " + other.number() + " are swapped"))
                        : Optional.empty();
            }
        }
        int stud = tap.near(unit);
        if (tap.end()) {
            return Optional.of(wrong(String.format(Locale.ROOT, "tap %d reads the end of its range, %.2f V: it sits on a higher stud", tap.number(), tap.volts())));
        }
        if (tap.nothing(unit)) {
            return Optional.of(wrong("tap " + tap.number() + " reads nothing: its lead is off or cut, its fuse blown, or its two wires are reversed"));
        }
        if (Math.abs(tap.seat(unit) - stud) > SNUG) {
            return Optional.of(wrong(String.format(Locale.ROOT, "tap %d reads %.2f V, which fits no stud", tap.number(), tap.volts())));
        }
        boolean twice = taps.stream().anyMatch(t -> t.number() == stud && t.on(stud, unit));
        return Optional.of(wrong("tap " + tap.number() + " sits on stud " + stud + (twice ? ", where tap " + stud + " sits too" : "")));
    }

    private List<Outcome> levels() {
        List<Outcome> found = new ArrayList<>();
        double low = Double.MAX_VALUE;
        double high = 0;
        for (Channel cell : rig.channels(Role.CELL_VOLTS)) {
            double volts = means.mean(cell);
            low = Math.min(low, volts);
            high = Math.max(high, volts);
            if (!(volts >= LEAST_CELL_V && volts <= MOST_CELL_V)) {
                found.add(wrong(String.format(Locale.ROOT, "cell %d shows %.3f V, outside %.2f…%.2f V: its tap, or the cell", cell.cell(), volts,
                        LEAST_CELL_V, MOST_CELL_V)));
            }
        }
        if (found.isEmpty()) {
            found.add(Outcome.passed(AT_REST, ORDER, String.format(Locale.ROOT, "%d in order, cells %.3f…%.3f V", taps.size(), low, high)));
        }
        return found;
    }

    private Outcome count(double packVolts) {
        long cells = Math.round(packVolts / unit);
        return cells == rig.cells().series()
                ? Outcome.passed(AT_REST, "count", cells + " in series")
                : Outcome.failed(AT_REST, "count", String.format(Locale.ROOT,
                        "the pack's own %.2f V are %d cells of %.2f V, the rig file has %d: count them, look for one reversed", packVolts, cells, unit,
                        rig.cells().series()));
    }

    /** The highest tap of each island, one upon the other. */
    private Outcome sum(Channel pack) {
        int[] grounds = taps.stream().mapToInt(Tap::ground).distinct().toArray();
        double volts = 0;
        double[] u = new double[grounds.length + 1];
        for (int i = 0; i < grounds.length; i++) {
            int ground = grounds[i];
            Tap top = taps.stream().filter(t -> t.ground() == ground).max((a, b) -> Integer.compare(a.number(), b.number())).orElseThrow();
            volts += top.volts();
            u[i] = top.channel().uncertainty(top.volts());
        }
        double own = means.mean(pack);
        u[grounds.length] = pack.uncertainty(own);
        double limit = Limit.together(u) + 3 * means.standard(pack);
        String words = String.format(Locale.ROOT, "%.3f V by the taps, %.3f V by itself; they may differ by %.0f mV", volts, own, limit * 1e3);
        return Math.abs(volts - own) <= limit
                ? Outcome.passed(AT_REST, "sum", words)
                : Outcome.failed(AT_REST, "sum", words + ": look for a wrong divider, a lead with a voltage of its own, a wrong calibration");
    }

    private static Outcome wrong(String words) {
        return Outcome.failed(AT_REST, ORDER, words);
    }
}
