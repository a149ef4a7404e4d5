package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Device;
import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;

/** Cells from B+ down to B− with their leads and probes, then the way of the current from B+ round to B−. */
final class PowerSheet {
    private static final double LINE = 100;
    private static final double TEXT = 172;
    private static final double RAIL = Ink.WIDTH - Ink.EDGE - 8;
    private static final int SIZE = 13;

    private final Rig rig;
    private final List<Connection> connections;
    /** Parts that lie on the line of the current, drawn after it. */
    private final List<Runnable> later = new ArrayList<>();

    private PowerSheet(Rig rig, List<Connection> connections) {
        this.rig = rig;
        this.connections = connections;
    }

    static PowerSheet of(Rig rig, List<Connection> connections) {
        return new PowerSheet(rig, connections);
    }

    double draw(Ink ink, double top) {
        return path(ink, cells(ink, top) + 16);
    }

    private double cells(Ink ink, double top) {
        double y = ink.words(Ink.EDGE, top + 14, 480, 15, "head", "Cells, their leads and probes") + 12;
        for (int cell = rig.cells().series(); cell >= 1; cell--) {
            ink.spot(LINE, y);
            String pole = cell == rig.cells().series() ? "B+" : "";
            if (!pole.isEmpty()) {
                ink.words(Ink.EDGE, y + 4, 70, SIZE, "head", pole);
            }
            double below = measured(ink, y, Wiring.stud(cell));
            double plates = Math.max(below, y + 20);
            ink.line("power", LINE, y, LINE, plates);
            ink.line("power", LINE - 16, plates, LINE + 16, plates);
            ink.line("power", LINE - 8, plates + 9, LINE + 8, plates + 9);
            ink.words(Ink.EDGE, plates + 9, 66, SIZE, "", "cell " + cell);
            double end = Math.max(measured(ink, plates + 5, "cell " + cell + ", body"), plates + 28);
            ink.line("power", LINE, plates + 9, LINE, end);
            ink.spot(LINE, end);
            double after = measured(ink, end, "cell " + cell + ", − stud");
            if (cell > 1) {
                double bar = Math.max(measured(ink, after, "bar between cells " + (cell - 1) + " and " + cell), end + 24);
                ink.line("power", LINE, end, LINE, bar);
                y = bar;
            } else {
                ink.words(Ink.EDGE, end + 4, 70, SIZE, "head", "B−");
                y = Math.max(after, end + 18);
            }
        }
        return y;
    }

    /** All that measures at a place, one under the other, each on a thin line from the cells; a small box on it is a fuse. */
    private double measured(Ink ink, double top, String place) {
        double y = top;
        for (Connection each : connections) {
            boolean lead = each.label().startsWith("S");
            if (each.from().equals(place) && (lead || each.label().startsWith("T"))) {
                ink.line("thin", LINE, top, LINE + 22, y);
                ink.line("thin", LINE + 22, y, TEXT - 6, y);
                if (lead) {
                    ink.box("part", LINE + 34, y - 4, 18, 8);
                }
                y = ink.words(TEXT, y + 4, RAIL - TEXT, SIZE, "", each.label() + "  " + column(each) + each.to()) - 3;
            }
        }
        return y;
    }

    /** The column's name, where the note begins with one. */
    private static String column(Connection each) {
        String first = each.note().replaceFirst(";.*", "");
        return first.matches("[a-z0-9_]+") ? first + ", " : "";
    }

    private double path(Ink ink, double top) {
        double y = ink.words(Ink.EDGE, top + 14, 480, 15, "head", "The way of the current") + 16;
        double begun = y;
        ink.words(Ink.EDGE, y + 4, 70, SIZE, "head", "B+");
        y = part(ink, y + 26, "fuse", kind(PathPart.Kind.FUSE), true);
        double before = y - 8;
        double contactor = y + 14;
        y = part(ink, contactor, "K1", kind(PathPart.Kind.CONTACTOR) + "; beside it Kp and " + Wiring.ohms(rig.busSide().prechargeOhms())
                + " for the pre-charge", false);
        ink.line("thin", LINE, before, LINE - 40, before);
        ink.line("thin", LINE - 40, before, LINE - 40, y);
        ink.line("thin", LINE - 40, y, LINE, y);
        ink.box("part", LINE - 46, contactor - 10, 12, 22);
        ink.line("power", LINE, begun, LINE, y + 14);
        y += 14;
        ink.words(Ink.EDGE, y + 4, 70, SIZE, "head", "bus+");
        double rail = y;
        y = rung(ink, y + 8, "bleed", Wiring.ohms(rig.busSide().bleedOhms()) + ", never disconnected", false);
        for (Device device : rig.devices()) {
            y = rung(ink, y, device.name(), stopped(device), contact(device));
        }
        ink.line("power", LINE, rail, LINE, y - 24);
        double down = y + 6;
        ink.line("power", RAIL, rail + 34, RAIL, down);
        ink.line("power", RAIL, down, LINE, down);
        ink.words(Ink.EDGE, down + 4, 70, SIZE, "head", "bus−");
        y = down + 26;
        if (rig.protection().isPresent()) {
            y = part(ink, y, "battery's protection", Wiring.amps(rig.protection().get().ratedAmps()), true) + 14;
        }
        y = part(ink, y, "shunt", kind(PathPart.Kind.SHUNT) + "; S1 and S2 from its own screws to the INA228", true);
        ink.line("power", LINE, down, LINE, y + 14);
        later.forEach(Runnable::run);
        later.clear();
        ink.words(Ink.EDGE, y + 18, 70, SIZE, "head", "B−");
        String carried = String.join("; ", rig.path().stream().filter(p -> p.common() && switch (p.kind()) {
            case CABLE, BAR, LUG, PLUG -> true;
            case FUSE, SHUNT, CONTACTOR, RELAY -> false;
        }).map(p -> p.name() + " " + Wiring.amps(p.ratedAmps())).toList());
        return carried.isEmpty() ? y + 24 : ink.words(TEXT - 44, y + 18, RAIL - TEXT + 44, SIZE, "", "Conductors: " + carried + ".") + 6;
    }

    private double part(Ink ink, double y, String name, String rating, boolean closed) {
        later.add(() -> {
            ink.box("part", LINE - 8, y - 10, 16, 20);
            if (!closed) {
                ink.line("thin", LINE - 8, y + 10, LINE + 8, y - 10);
            }
        });
        return ink.words(LINE + 28, y + 4, RAIL - LINE - 28, SIZE, "", name + ", " + rating) + 4;
    }

    /** A device, or the bleed, between both rails. */
    private double rung(Ink ink, double top, String name, String words, boolean contact) {
        double left = LINE + 44;
        double right = RAIL - 30;
        double end = ink.words(left + 8, top + 20, right - left - 16, SIZE, "head", name);
        end = ink.words(left + 8, end, right - left - 16, SIZE, "", words);
        double middle = top + 24;
        ink.line("thin", left, top + 4, right, top + 4);
        ink.line("thin", left, end - 6, right, end - 6);
        ink.line("thin", left, top + 4, left, end - 6);
        ink.line("thin", right, top + 4, right, end - 6);
        ink.line("power", LINE, middle, left, middle);
        ink.line("power", right, middle, RAIL, middle);
        if (contact) {
            ink.box("part", LINE + 14, middle - 10, 16, 20);
            ink.line("thin", LINE + 14, middle + 10, LINE + 30, middle - 10);
        }
        return Math.max(end + 6, top + 48);
    }

    private boolean contact(Device device) {
        return rig.path().stream().anyMatch(p -> p.device().equals(device.name()) && p.kind() == PathPart.Kind.RELAY);
    }

    private String stopped(Device device) {
        String what = Wiring.amps(Math.round(device.maxAmps() * 10) / 10.0) + (device.charges() ? " into the cells" : " out of the cells");
        String own = contact(device) ? "its own contact, the box before it" : switch (device) {
            case Device.PlainCharger _ -> "the relay of its mains";
            case Device.Inverter _ -> "its remote input";
            case Device.Programmed _ -> "its output";
        };
        return what + "; stopped by K1, and by " + own;
    }

    private String kind(PathPart.Kind kind) {
        return rig.path().stream().filter(p -> p.kind() == kind && p.common()).findFirst()
                .map(p -> Wiring.amps(p.ratedAmps()) + (p.breaksAmps() > 0 ? ", breaks " + Wiring.amps(p.breaksAmps()) : "")).orElse("");
    }
}
