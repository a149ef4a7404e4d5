package rigwarden.page;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import rigwarden.paper.Spots;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;

/**
 * The pack as it lies on the bench, seen from above: cells stand side by side, every other one turned round, so that short
 * bars join + to − along the edges; after eight cells the row turns back. Values stand where their probes sit.
 */
final class PackDrawing {
    private static final int LONGEST_ROW = 8;
    private static final int CELL_W = 44;
    private static final int CELL_H = 148;
    private static final int STUD_R = 7;
    private static final int STUD_IN = 17;
    private static final int STUD_W = 26;
    private static final int FINGER = 34;
    private static final int LEFT = 14;
    private static final int TOP = 26;
    private static final int BETWEEN = 46;
    private static final int LEAST_WIDTH = 372;
    private static final int PATH_H = 92;

    private final int cells;
    private final List<Channel> channels;
    private final Predicate<Channel> positive;
    private final View view;
    private final int rows;
    private final int row;
    private final int width;
    private final StringBuilder svg = new StringBuilder();
    private List<Spot> carried = List.of();
    private boolean lays;

    private PackDrawing(int cells, List<Channel> channels, Predicate<Channel> positive, View view) {
        this.cells = cells;
        this.channels = channels;
        this.positive = positive;
        this.view = view;
        rows = (cells + LONGEST_ROW - 1) / LONGEST_ROW;
        row = (cells + rows - 1) / rows;
        width = Math.max(LEAST_WIDTH, 2 * LEFT + row * CELL_W);
    }

    /** Draws a rig; with places to tap on, where a person may say that the loose probe lies. */
    static String draw(Rig rig, View view, boolean lays) {
        PackDrawing drawing = new PackDrawing(rig.cells().series(), rig.channels(), c -> Spots.positive(rig, c), view);
        drawing.carried = rig.channels(Role.LOOSE).isEmpty() ? List.of() : Spot.of(rig);
        drawing.lays = lays;
        return drawing.drawn();
    }

    /** Element that marks a spot; those of other parts are not drawn. */
    static String id(Spot spot) {
        return "s-" + spot.part().name().toLowerCase(Locale.ROOT) + spot.cell();
    }

    /** Draws so many cells in series; {@code positive} says which studs' channels are on the + side. */
    static String draw(int cells, List<Channel> channels, Predicate<Channel> positive, View view) {
        return new PackDrawing(cells, channels, positive, view).drawn();
    }

    private String drawn() {
        int pathTop = TOP + rows * CELL_H + (rows - 1) * BETWEEN + 34;
        svg.append(Spots.say("<svg class=\"pack\" viewBox=\"0 0 %d %d\" role=\"img\" aria-label=\"the cells as they lie on"
                + " the bench, with what is measured where\">", width, pathTop + PATH_H));
        for (int cell = 1; cell <= cells; cell++) {
            cell(cell);
        }
        for (int cell = 1; cell < cells; cell++) {
            bar(cell);
        }
        for (int cell = 1; cell <= cells; cell++) {
            studs(cell);
        }
        path(pathTop);
        carried.forEach(spot -> spot(spot, pathTop));
        return svg.append("</svg>").toString();
    }

    /** Left edge of a cell; odd rows run back. A single short row lies in the middle. */
    private int x(int cell) {
        int place = (cell - 1) % row;
        int shift = (width - row * CELL_W) / 2;
        return shift + CELL_W * (line(cell) % 2 == 0 ? place : row - 1 - place);
    }

    private int y(int cell) {
        return TOP + line(cell) * (CELL_H + BETWEEN);
    }

    private int line(int cell) {
        return (cell - 1) / row;
    }

    /** Turns a row round where only that lets the last + of the first row face the first − of the second: two rows at most. */
    private int turned(int cell) {
        return line(cell) > 0 ? 1 : rows == 1 ? 0 : row % 2;
    }

    /** Which end of a cell's length its + lies at. */
    private boolean plusUp(int cell) {
        return ((cell - 1) % row + turned(cell)) % 2 == 0;
    }

    private int studX(int cell) {
        return x(cell) + CELL_W / 2;
    }

    private int studY(int cell, boolean plus) {
        return plus == plusUp(cell) ? y(cell) + STUD_IN : y(cell) + CELL_H - STUD_IN;
    }

    private void cell(int cell) {
        int x = x(cell);
        int y = y(cell);
        svg.append(Spots.say("<rect class=\"cell\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"3\"/>", x + 1, y,
                CELL_W - 2, CELL_H));
        text("cell-no", studX(cell), y + 58, Integer.toString(cell));
        for (Channel volts : of(Role.CELL_VOLTS, cell)) {
            value("cell-v", volts, studX(cell), y + 76);
            trend(volts, studX(cell), y + 89);
        }
        for (Channel body : of(Role.BODY, cell)) {
            value("cell-c", body, studX(cell), y + 106);
        }
    }

    private void bar(int cell) {
        svg.append(Spots.say("<line class=\"bar\" x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\"/>", studX(cell),
                studY(cell, true), studX(cell + 1), studY(cell + 1, false)));
        boolean upper = plusUp(cell);
        boolean along = line(cell) == line(cell + 1);
        for (Channel probe : of(Role.BAR, cell)) {
            value("stud-c", probe, (studX(cell) + studX(cell + 1)) / 2,
                    along ? upper ? y(cell) - 5 : y(cell) + CELL_H + 13 : y(cell) + CELL_H + BETWEEN / 2 + 4);
        }
    }

    private void studs(int cell) {
        for (boolean plus : new boolean[] {true, false}) {
            int x = studX(cell);
            int y = studY(cell, plus);
            svg.append(Spots.say("<circle class=\"stud\" cx=\"%d\" cy=\"%d\" r=\"%d\"/>", x, y, STUD_R));
            text("pole", x, y + 4, plus ? "+" : "−");
            boolean upper = plus == plusUp(cell);
            for (Channel stud : of(Role.STUD, cell)) {
                if (positive.test(stud) == plus) {
                    value("stud-c", stud, x, upper ? y(cell) - 5 : y(cell) + CELL_H + 13);
                }
            }
        }
    }

    /** What the current passes behind the pack: shunt at −, contactor at +, the bus beyond. */
    private void path(int top) {
        int third = width / 3;
        svg.append(Spots.say("<line class=\"wire\" x1=\"10\" y1=\"%d\" x2=\"%d\" y2=\"%d\"/>", top, width - 10, top));
        station(third / 2, top, "shunt", List.of(Role.CURRENT, Role.SHUNT_BODY));
        station(third / 2 + third, top, "contactor", List.of(Role.FEEDBACK, Role.CONTACTOR_BODY));
        station(third / 2 + 2 * third, top, "bus · room", List.of(Role.BUS_VOLTS, Role.ROOM));
    }

    private void station(int x, int top, String name, List<Role> roles) {
        svg.append(Spots.say("<rect class=\"station\" x=\"%d\" y=\"%d\" width=\"104\" height=\"70\" rx=\"6\"/>", x - 52,
                top + 8));
        text("station-name", x, top + 24, name);
        int line = 0;
        for (Role role : roles) {
            for (Channel channel : channels.stream().filter(c -> c.role() == role).limit(1).toList()) {
                value("station-v", channel, x, top + 44 + 20 * line++);
            }
        }
    }

    /** Where the loose probe lies there is a ring, and where it may be told a place for a finger: studs and bars along the edges, bodies between. */
    private void spot(Spot spot, int top) {
        int cell = spot.cell();
        switch (spot.part()) {
            case BODY -> place(spot, x(cell) + 2, y(cell) + FINGER, CELL_W - 4, CELL_H - 2 * FINGER);
            case STUD_POSITIVE -> place(spot, studX(cell) - STUD_W / 2, studTop(cell, true), STUD_W, FINGER);
            case STUD_NEGATIVE -> place(spot, studX(cell) - STUD_W / 2, studTop(cell, false), STUD_W, FINGER);
            case BAR -> {
                int x = (studX(cell) + studX(cell + 1)) / 2;
                int y = (studY(cell, true) + studY(cell + 1, false)) / 2;
                place(spot, x - (CELL_W - STUD_W) / 2, y - FINGER / 2, CELL_W - STUD_W, FINGER);
            }
            case SHUNT -> station(spot, 0, top);
            case CONTACTOR -> station(spot, 1, top);
            case AWAY -> station(spot, 2, top);
            case OTHER -> { }
        }
    }

    private int studTop(int cell, boolean plus) {
        return studY(cell, plus) - FINGER / 2;
    }

    private void station(Spot spot, int place, int top) {
        place(spot, width / 6 + place * (width / 3) - 52, top + 8, 104, 70);
    }

    private void place(Spot spot, int x, int y, int w, int h) {
        String tap = lays ? " data-spot=\"" + Html.text(spot.name()) + "\" role=\"button\" tabindex=\"0\" aria-label=\"the loose probe lies on: "
                + Html.text(spot.name()) + "\"" : "";
        svg.append(Spots.say("<rect id=\"%s\" class=\"spot\" data-mark=\"%s\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"5\"%s/>",
                Html.text(id(spot)), Html.text(view.mark(id(spot))), x, y, w, h, tap));
    }

    private List<Channel> of(Role role, int cell) {
        return channels.stream().filter(c -> c.role() == role && c.cell() == cell).toList();
    }

    private void value(String style, Channel channel, int x, int y) {
        String id = "v-" + channel.name();
        svg.append(Spots.say("<text id=\"%s\" class=\"%s\" x=\"%d\" y=\"%d\">%s</text>", Html.text(id), style, x, y,
                Html.text(view.word(id))));
    }

    private void trend(Channel channel, int x, int y) {
        String id = "t-" + channel.name();
        svg.append(Spots.say("<text id=\"%s\" class=\"trend\" x=\"%d\" y=\"%d\">%s</text>", Html.text(id), x, y,
                Html.text(view.word(id))));
    }

    private void text(String style, int x, int y, String words) {
        svg.append(Spots.say("<text class=\"%s\" x=\"%d\" y=\"%d\">%s</text>", style, x, y, words));
    }
}
