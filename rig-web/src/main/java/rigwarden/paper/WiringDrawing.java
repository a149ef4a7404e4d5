package rigwarden.paper;

import java.util.List;
import java.util.function.ToDoubleFunction;
import rigwarden.rig.Rig;

/** The drawing of a rig's wiring, on two sheets: what carries and measures the current, and what stops it. Each has the cautions. */
public final class WiringDrawing {
    private static final int TITLE = 20;
    private static final int SMALL = 12;

    private WiringDrawing() {}

    /**
     * The sheet with cells, sense leads, probes and the power path.
     *
     * @param mark what tells the rig file from another
     */
    public static String power(Rig rig, List<Connection> connections, String mark) {
        return sheet("Power and sense", rig, mark, PowerSheet.of(rig, connections)::draw);
    }

    /** The sheet with the stop chain, the controller's lines and the buses. */
    public static String stop(Rig rig, List<Connection> connections, String mark) {
        return sheet("Stop and control", rig, mark, new StopSheet(connections)::draw);
    }

    /** What a sheet draws below its title: from this height to that which it gives back. */
    interface Content {
        double draw(Ink ink, double top);
    }

    private static String sheet(String title, Rig rig, String mark, Content content) {
        ToDoubleFunction<Ink> all = ink -> {
            double y = ink.words(Ink.EDGE, 32, Ink.WIDTH - 2 * Ink.EDGE, TITLE, "head", title + ": " + rig.name());
            y = ink.words(Ink.EDGE, y, Ink.WIDTH - 2 * Ink.EDGE, SMALL, "", "Drawn by Rigwarden from rig file " + mark
                    + ". The labels are those of the table beside it, which has every connection.");
            return cautions(ink, content.draw(ink, y + 8));
        };
        double height = all.applyAsDouble(new Ink(0, title));
        Ink ink = new Ink(height, title + ": " + rig.name());
        double end = all.applyAsDouble(ink);
        if (end != height) {
            throw new IllegalStateException("drawn to " + end + " on a sheet of " + height);
        }
        return ink.close();
    }

    private static double cautions(Ink ink, double top) {
        double y = ink.words(Ink.EDGE, top + 30, Ink.WIDTH - 2 * Ink.EDGE, 15, "head", "Cautions");
        for (String caution : CautionWords.all()) {
            ink.box("part", Ink.EDGE, y - 9, 8, 8);
            y = ink.words(Ink.EDGE + 18, y, Ink.WIDTH - 2 * Ink.EDGE - 18, SMALL, "", caution) + 4;
        }
        return y + 4;
    }
}
