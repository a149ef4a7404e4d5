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
    private int touched = -1;
    private double fingerCelsius;
    private double contactSeconds;

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
        node = other.node.clone();
        inRoom = other.inRoom.clone();
        celsius = other.celsius.clone();
        keep = other.keep.clone();
        seconds = other.seconds;
        touched = other.touched;
        fingerCelsius = other.fingerCelsius;
        contactSeconds = other.contactSeconds;
    }

    /** Two fingers hold a bead; they warm it as fast as this time constant says, against its place. */
    void touch(int bead, double celsiusOfFinger, double secondsOfContact) {
        touched = known(bead);
        fingerCelsius = celsiusOfFinger;
        contactSeconds = secondsOfContact;
    }

    void letGo() {
        touched = -1;
    }

    void detach(int bead) {
        inRoom[known(bead)] = true;
    }

    /** A person puts it elsewhere; from then on it follows that place. */
    void lay(int bead, Node place, Warmth warmth) {
        inRoom[known(bead)] = place.part() == Node.Part.ROOM;
        node[bead] = inRoom[bead] ? 0 : warmth.index(place);
    }

    private int known(int bead) {
        if (bead < 0 || bead >= inRoom.length) {
            throw new IllegalArgumentException("no bead " + bead + " among " + inRoom.length);
        }
        return bead;
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
            celsius[i] = i == touched ? held(i, aim, stepSeconds) : aim + (celsius[i] - aim) * keep[i];
        }
    }

    /** Between its place and the fingers, each by its own time constant. */
    private double held(int bead, double placeCelsius, double stepSeconds) {
        double place = 1 / lagSeconds[bead];
        double finger = 1 / contactSeconds;
        double aim = (placeCelsius * place + fingerCelsius * finger) / (place + finger);
        return aim + (celsius[bead] - aim) * Math.exp(-stepSeconds * (place + finger));
    }

    double celsius(int bead) {
        return celsius[bead];
    }
}
