package rigwarden.pack;

import java.util.Arrays;

/**
 * Temperatures of bodies, studs, lugs and bars, shunt and contactor: heat capacities, conductances, I²R.
 *
 * <p>Second-order step, so that at 0.1 s the error against the exact solution is far below a millikelvin; heat that
 * leaves one node enters the other, so the balance is exact.
 */
final class Warmth {
    private static final double FASTEST_SECONDS = 1;

    private final int cells;
    private final double[] capacity;
    private final double[] toRoom;
    private final int[] from;
    private final int[] to;
    private final double[] between;
    private final double[] ohms;
    private final double[] jointOhms;
    private final double[] tabOhms;
    private final double linkOhms;
    private double innerOhms;
    private double lugOhms;
    private final double[] bodyWatts;
    private final double[] celsius;
    private final double[] first;
    private final double[] second;

    Warmth(WorldParameters world) {
        WarmthParameters p = world.warmth();
        PathParameters path = world.path();
        cells = world.cells().size();
        int nodes = 4 * cells + 3;
        capacity = new double[nodes];
        toRoom = new double[nodes];
        ohms = new double[nodes];
        int edges = 5 * cells - 1;
        from = new int[edges];
        to = new int[edges];
        between = new double[edges];
        bodyWatts = new double[cells];
        jointOhms = new double[2 * cells];
        Arrays.fill(jointOhms, path.jointOhms());
        linkOhms = path.linkOhms();
        int edge = 0;
        for (int k = 0; k < cells; k++) {
            place(k, world.cells().get(k).joulesPerKelvin(), p.bodyToRoom());
            for (int side = 0; side < 2; side++) {
                int stud = stud(k, side == 0);
                place(stud, p.studCapacity(), 0);
                edge = join(edge, stud, k, p.studToBody());
                edge = join(edge, stud, link(side == 0 ? k + 1 : k), p.studToLink());
            }
            if (k > 0) {
                edge = join(edge, k - 1, k, p.bodyToBody());
            }
        }
        for (int i = 0; i <= cells; i++) {
            boolean end = i == 0 || i == cells;
            place(link(i), p.linkCapacity(), p.linkToRoom() + (end ? p.cableToRoom() : 0));
        }
        place(nodes - 2, p.shuntCapacity(), p.shuntToRoom());
        place(nodes - 1, p.contactorCapacity(), p.contactorToRoom());
        ohms[nodes - 2] = path.shuntOhms();
        ohms[nodes - 1] = path.contactorOhms();
        tabOhms = world.cells().stream().mapToDouble(CellParameters::tabOhms).toArray();
        rate();
        celsius = new double[nodes];
        Arrays.fill(celsius, world.room().celsius());
        first = new double[nodes];
        second = new double[nodes];
        requireSlow();
    }

    Warmth(Warmth other) {
        cells = other.cells;
        capacity = other.capacity;
        toRoom = other.toRoom;
        from = other.from;
        to = other.to;
        between = other.between;
        tabOhms = other.tabOhms;
        linkOhms = other.linkOhms;
        innerOhms = other.innerOhms;
        lugOhms = other.lugOhms;
        ohms = other.ohms.clone();
        jointOhms = other.jointOhms.clone();
        bodyWatts = other.bodyWatts.clone();
        celsius = other.celsius.clone();
        first = other.first.clone();
        second = other.second.clone();
    }

    private void place(int node, double joulesPerKelvin, double wattsPerKelvin) {
        capacity[node] = joulesPerKelvin;
        toRoom[node] = wattsPerKelvin;
    }

    private int join(int edge, int one, int other, double wattsPerKelvin) {
        from[edge] = one;
        to[edge] = other;
        between[edge] = wattsPerKelvin;
        return edge + 1;
    }

    private void requireSlow() {
        double[] out = toRoom.clone();
        for (int e = 0; e < from.length; e++) {
            out[from[e]] += between[e];
            out[to[e]] += between[e];
        }
        for (int i = 0; i < out.length; i++) {
            if (!(capacity[i] >= out[i] * FASTEST_SECONDS) || !(capacity[i] > 0)) {
                throw new IllegalArgumentException("node " + i + " with " + capacity[i] + " J/K and " + out[i]
                        + " W/K would settle in under " + FASTEST_SECONDS + " s");
            }
        }
    }

    private int stud(int cell, boolean positive) {
        return cells + 2 * cell + (positive ? 0 : 1);
    }

    private int link(int link) {
        return 3 * cells + link;
    }

    /** Place in the arrays; the room has none. */
    int index(Node node) {
        int index = switch (node.part()) {
            case BODY -> node.index();
            case STUD_POSITIVE -> stud(node.index(), true);
            case STUD_NEGATIVE -> stud(node.index(), false);
            case LINK -> link(node.index());
            case SHUNT -> 4 * cells + 1;
            case CONTACTOR -> 4 * cells + 2;
            case ROOM -> throw new IllegalArgumentException("the room is no node of the pack");
        };
        int last = node.part() == Node.Part.LINK ? cells : cells - 1;
        if (node.index() < 0 || node.index() > last) {
            throw new IllegalArgumentException("no such place: " + node);
        }
        return index;
    }

    Node node(int index) {
        if (index < cells) {
            return Node.body(index);
        }
        if (index < 3 * cells) {
            return Node.stud((index - cells) / 2, (index - cells) % 2 == 0);
        }
        if (index <= 4 * cells) {
            return Node.link(index - 3 * cells);
        }
        return index == 4 * cells + 1 ? Node.SHUNT : Node.CONTACTOR;
    }

    void loosen(int cell, boolean positive, double addedOhms) {
        jointOhms[2 * cell + (positive ? 0 : 1)] += addedOhms;
        rate();
    }

    /** Half of a joint warms the stud, half the lug or bar. */
    private void rate() {
        for (int i = 0; i < jointOhms.length; i++) {
            ohms[cells + i] = tabOhms[i / 2] + jointOhms[i] / 2;
        }
        for (int i = 0; i <= cells; i++) {
            ohms[link(i)] = linkOhms + jointsOf(i) / 2;
        }
        lugOhms = 2 * linkOhms + jointsOf(0) + jointsOf(cells);
        innerOhms = 0;
        for (int i = 1; i < cells; i++) {
            innerOhms += barOhms(i);
        }
    }

    private double jointsOf(int link) {
        double below = link > 0 ? jointOhms[2 * (link - 1)] : 0;
        double above = link < cells ? jointOhms[2 * link + 1] : 0;
        return below + above;
    }

    /** The bar below a cell, by the cell's number from 1, with its two joints. */
    double barOhms(int cell) {
        return linkOhms + jointsOf(cell);
    }

    /** Bars with their joints, between the outer studs. */
    double innerOhms() {
        return innerOhms;
    }

    /** Both lugs with their joints. */
    double lugOhms() {
        return lugOhms;
    }

    void heat(int cell, double watts) {
        bodyWatts[cell] += watts;
    }

    double joulesPerKelvin(int cell) {
        return capacity[cell];
    }

    void step(double amps, double seconds, double roomCelsius, Cell[] bodies) {
        double squareAmps = amps * amps;
        for (int i = 0; i < celsius.length; i++) {
            first[i] = ohms[i] * squareAmps - toRoom[i] * (celsius[i] - roomCelsius);
        }
        for (int k = 0; k < cells; k++) {
            first[k] += bodies[k].heatWatts() + bodyWatts[k];
        }
        for (int e = 0; e < from.length; e++) {
            double watts = between[e] * (celsius[from[e]] - celsius[to[e]]);
            first[from[e]] -= watts;
            first[to[e]] += watts;
        }
        for (int i = 0; i < celsius.length; i++) {
            first[i] /= capacity[i];
            second[i] = -toRoom[i] * first[i];
        }
        for (int e = 0; e < from.length; e++) {
            double watts = between[e] * (first[from[e]] - first[to[e]]);
            second[from[e]] -= watts;
            second[to[e]] += watts;
        }
        for (int i = 0; i < celsius.length; i++) {
            celsius[i] += seconds * (first[i] + 0.5 * seconds * second[i] / capacity[i]);
        }
    }

    double celsius(int index) {
        return celsius[index];
    }

    int hottest() {
        int hottest = 0;
        for (int i = 1; i < celsius.length; i++) {
            hottest = celsius[i] > celsius[hottest] ? i : hottest;
        }
        return hottest;
    }
}
