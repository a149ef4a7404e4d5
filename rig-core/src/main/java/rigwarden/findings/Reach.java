package rigwarden.findings;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rigwarden.findings.trace.Warmth;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;

/**
 * When a place will reach a limit, by the same forecast as that of its end, asked at steps on the way: not before the warm side of the
 * interval is there, and at the latest when the cool side is.
 *
 * @param earliestHours from now; nothing where even the warm side stays below until the end
 * @param latestHours from now; nothing where the cool side stays below until the end, so that it may not be reached at all
 */
public record Reach(OptionalDouble earliestHours, OptionalDouble latestHours) {
    private static final int STEPS = 12;
    private static final double BETWEEN = 0.25;

    /** It stays below. */
    public static final Reach NEVER = new Reach(OptionalDouble.empty(), OptionalDouble.empty());

    /**
     * Of one place of a running step.
     *
     * @param warmth of the step until now
     * @param where the place
     * @param limitCelsius as its probe reads it
     * @param endHours when the step will end, since it began
     * @param squareAmps mean of the current's square from now until then, A²; what is between grows evenly
     * @param reversible as for {@link Heat#ahead}
     */
    public static Reach of(List<Warmth> warmth, Channel where, double limitCelsius, double endHours, double squareAmps,
            Optional<Reversible> reversible) {
        List<Warmth> needed = warmth.stream().filter(w -> w.where().equals(where) || w.where().role() == Role.ROOM
                || w.where().role() == Role.BODY && w.where().cell() == where.cell()).toList();
        Optional<Warmth> place = needed.stream().filter(w -> w.where().equals(where)).findFirst();
        if (place.isEmpty() || place.get().hours().length == 0) {
            return NEVER;
        }
        Way way = new Way(needed, place.get(), limitCelsius, endHours, squareAmps, reversible);
        return way.mayMeet() ? way.walked() : NEVER;
    }

    /** From now to the end of the step. */
    private record Way(List<Warmth> needed, Warmth place, double limitCelsius, double endHours, double squareAmps, Optional<Reversible> reversible) {
        /** A look at both ends and the middle; between them a rise may be higher by a part of its interval, and that is looked at too. */
        boolean mayMeet() {
            return List.of(0, STEPS / 2, STEPS).stream().map(this::at).flatMap(Optional::stream)
                    .anyMatch(a -> a.celsius() + (1 + BETWEEN) * a.readKelvin() >= limitCelsius);
        }

        Reach walked() {
            Crossing warm = new Crossing();
            Crossing cool = new Crossing();
            for (int i = 0; i <= STEPS; i++) {
                Optional<Heat.Ahead> there = at(i);
                if (there.isEmpty()) {
                    return NEVER;
                }
                double over = there.get().celsius() - limitCelsius;
                warm.next(i / (double) STEPS, over + there.get().readKelvin());
                cool.next(i / (double) STEPS, over - there.get().readKelvin());
            }
            return new Reach(warm.hours(endHours - now()), cool.hours(endHours - now()));
        }

        private double now() {
            return place.hours()[place.hours().length - 1];
        }

        private Optional<Heat.Ahead> at(int step) {
            double share = step / (double) STEPS;
            double square = place.squareAmps()[place.hours().length - 1];
            return Heat.ahead(needed, now() + share * (endHours - now()), square + share * (squareAmps - square), reversible).stream()
                    .filter(a -> a.where().equals(place.where())).findFirst();
        }
    }

    /** Where a side of the interval first is at the limit, as a share of the way. */
    private static final class Crossing {
        private double before = Double.NaN;
        private double beforeShare;
        private double at = Double.NaN;

        void next(double share, double over) {
            if (Double.isNaN(at) && over >= 0) {
                at = Double.isNaN(before) ? share : beforeShare + (share - beforeShare) * -before / (over - before);
            }
            before = over;
            beforeShare = share;
        }

        OptionalDouble hours(double toGo) {
            return Double.isNaN(at) ? OptionalDouble.empty() : OptionalDouble.of(at * toGo);
        }
    }
}
