package rigwarden.pack;

import java.util.List;

/** The probes' temperatures, each behind its node or, fallen off, behind the air. */
final class Beads {
    private final double[] lagSeconds;
    private final int[] node;
    private final boolean[] inRoom;
    private final double[] celsius;
    private final double[] keep;
    private double seconds;

    Beads(List<Bead> beads, Warmth warmth, double celsiusAtStart) {
        int size = beads.size();
        lagSeconds = new double[size];
        node = new int[size];
        inRoom = new boolean[size];
        celsius = new double[size];
        keep = new double[size];
        for (int i = 0; i < size; i++) {
            lagSeconds[i] = beads.get(i).lagSeconds();
            inRoom[i] = beads.get(i).node().part() == Node.Part.ROOM;
            node[i] = inRoom[i] ? 0 : warmth.index(beads.get(i).node());
            celsius[i] = celsiusAtStart;
        }
    }

    Beads(Beads other) {
        lagSeconds = other.lagSeconds;
        node = other.node;
        inRoom = other.inRoom.clone();
        celsius = other.celsius.clone();
        keep = other.keep.clone();
        seconds = other.seconds;
    }

    void detach(int bead) {
        if (bead < 0 || bead >= inRoom.length) {
            throw new IllegalArgumentException("no bead " + bead + " among " + inRoom.length);
        }
        inRoom[bead] = true;
    }

    void step(double stepSeconds, Warmth warmth, double roomCelsius) {
        if (stepSeconds != seconds) {
            seconds = stepSeconds;
            for (int i = 0; i < keep.length; i++) {
                keep[i] = Math.exp(-stepSeconds / lagSeconds[i]);
            }
        }
        for (int i = 0; i < celsius.length; i++) {
            double aim = inRoom[i] ? roomCelsius : warmth.celsius(node[i]);
            celsius[i] = aim + (celsius[i] - aim) * keep[i];
        }
    }

    double celsius(int bead) {
        return celsius[bead];
    }
}
