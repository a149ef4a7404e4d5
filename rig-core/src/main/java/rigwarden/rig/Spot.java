package rigwarden.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A place where the loose probe can be, and where a person says that it is.
 *
 * @param name as the wiring table and the drawing call it, for example {@code cell 3, + stud}
 * @param part what kind of place
 * @param cell number of the cell; of a bar the lower of its two; 0 where the place belongs to none
 */
public record Spot(String name, Part part, int cell) {
    /** What a spot is on. */
    public enum Part {
        BODY,
        STUD_POSITIVE,
        STUD_NEGATIVE,
        BAR,
        SHUNT,
        CONTACTOR,
        /** A fuse, a relay, the battery's protection, a terminal of a source or sink. */
        OTHER,
        /** On nothing: it hangs in the air of the room. */
        AWAY
    }

    /** On nothing. */
    public static final Spot AWAY = new Spot("away", Part.AWAY, 0);

    /** Every spot of a rig: along the cells, then along the path, and {@link #AWAY} last. */
    public static List<Spot> of(Rig rig) {
        List<Spot> all = new ArrayList<>();
        int series = rig.cells().series();
        for (int cell = 1; cell <= series; cell++) {
            all.add(new Spot("cell " + cell + ", − stud", Part.STUD_NEGATIVE, cell));
            all.add(new Spot("cell " + cell + ", body", Part.BODY, cell));
            all.add(new Spot("cell " + cell + ", + stud", Part.STUD_POSITIVE, cell));
            if (cell < series) {
                all.add(new Spot("bar " + cell + "–" + (cell + 1), Part.BAR, cell));
            }
        }
        all.add(new Spot("fuse", Part.OTHER, 0));
        all.add(new Spot("contactor", Part.CONTACTOR, 0));
        rig.path().stream().filter(part -> part.kind() == PathPart.Kind.RELAY).forEach(relay -> all.add(new Spot(relay.name(), Part.OTHER, 0)));
        for (Device device : rig.devices()) {
            all.add(new Spot(device.name() + ", plus", Part.OTHER, 0));
            all.add(new Spot(device.name() + ", minus", Part.OTHER, 0));
        }
        rig.protection().ifPresent(_ -> all.add(new Spot("battery's protection", Part.OTHER, 0)));
        all.add(new Spot("shunt", Part.SHUNT, 0));
        all.add(AWAY);
        return List.copyOf(all);
    }

    /** The spot that somebody means who types {@code cell 3 +}, {@code bar 3-4} or the whole name; empty where there is none. */
    public static Optional<Spot> named(Rig rig, String typed) {
        String meant = plain(typed);
        return of(rig).stream().filter(spot -> plain(spot.name()).equals(meant)).findFirst();
    }

    /** Without what people leave out or have no key for. */
    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replace('−', '-').replace('–', '-').replaceAll("[,']|\\b(stud|the)\\b", " ")
                .replaceAll("\\s+", " ").strip();
    }

    /** Where a joint can be looked at: a stud or a bar. */
    public boolean joint() {
        return part == Part.STUD_POSITIVE || part == Part.STUD_NEGATIVE || part == Part.BAR;
    }
}
