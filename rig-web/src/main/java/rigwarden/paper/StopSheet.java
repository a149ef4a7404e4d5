package rigwarden.paper;

import java.util.List;

/** The stop chain from its supply to the coils, the controller's lines, and the links to chips and instruments. */
final class StopSheet {
    private static final double LINE = 60;
    private static final double WIDE = Ink.WIDTH - Ink.EDGE - LINE - 24;
    private static final int SIZE = 13;

    private final List<Connection> connections;

    StopSheet(List<Connection> connections) {
        this.connections = connections;
    }

    double draw(Ink ink, double top) {
        double y = heading(ink, top, "The stop chain");
        y = chain(ink, y);
        y = rows(ink, heading(ink, y + 8, "The controller's lines"), "L");
        return rows(ink, heading(ink, y + 8, "Links"), "B");
    }

    private double chain(Ink ink, double top) {
        double y = top + 6;
        double last = y;
        String trunk = "";
        for (Connection each : of("C")) {
            boolean goesOn = trunk.isEmpty() || each.from().equals(trunk) || each.from().startsWith("KL");
            if (trunk.isEmpty()) {
                ink.spot(LINE, y);
                y = ink.words(LINE + 24, y + 4, WIDE, SIZE, "head", each.from()) + 12;
            }
            double next = ink.words(LINE + 24, y + 4, WIDE, SIZE, "head", each.label() + "  " + each.to());
            next = ink.words(LINE + 24, next, WIDE, SIZE, "", (goesOn ? "" : "from " + each.from() + "; ") + each.note()) + 8;
            if (goesOn) {
                ink.line("control", LINE, last + 9, LINE, y - 9);
                ink.box("part", LINE - 9, y - 9, 18, 18);
            } else {
                ink.line("control", LINE - 24, y, LINE, y);
                ink.spot(LINE, y);
            }
            last = goesOn ? y : last;
            trunk = goesOn ? each.to() : trunk;
            y = next + 4;
        }
        return y;
    }

    private double rows(Ink ink, double top, String kind) {
        double y = top;
        for (Connection each : of(kind)) {
            ink.words(Ink.EDGE, y, LINE - Ink.EDGE + 10, SIZE, "head", each.label());
            y = ink.words(LINE + 24, y, WIDE, SIZE, "", each.from() + " → " + each.to() + "; " + each.conductor()
                    + (each.note().isEmpty() ? "" : "; " + each.note())) + 3;
        }
        return y;
    }

    private static double heading(Ink ink, double top, String words) {
        return ink.words(Ink.EDGE, top + 16, 480, 15, "head", words) + 6;
    }

    private List<Connection> of(String kind) {
        return connections.stream().filter(each -> each.label().startsWith(kind)).toList();
    }
}
