package rigwarden.pack;

/**
 * A place that has a temperature.
 *
 * @param part kind of place
 * @param index number of the cell for a body or a stud, from 0; of the link, 0 at B− to S at B+; else 0
 */
public record Node(Part part, int index) {
    /** Kinds of place. */
    public enum Part {
        /** Inside of a cell. */
        BODY,
        /** Positive stud of a cell. */
        STUD_POSITIVE,
        /** Negative stud of a cell. */
        STUD_NEGATIVE,
        /** Cable lug at either end, or the bar between two cells. */
        LINK,
        /** The shunt. */
        SHUNT,
        /** The main contactor. */
        CONTACTOR,
        /** Air of the room. */
        ROOM
    }

    /** The air of the room. */
    public static final Node ROOM = new Node(Part.ROOM, 0);
    /** The shunt. */
    public static final Node SHUNT = new Node(Part.SHUNT, 0);
    /** The main contactor. */
    public static final Node CONTACTOR = new Node(Part.CONTACTOR, 0);

    /** Body of a cell. */
    public static Node body(int cell) {
        return new Node(Part.BODY, cell);
    }

    /** Stud of a cell. */
    public static Node stud(int cell, boolean positive) {
        return new Node(positive ? Part.STUD_POSITIVE : Part.STUD_NEGATIVE, cell);
    }

    /** Lug or bar: 0 is the lug at B−, S the lug at B+, between them the bar below cell {@code link}. */
    public static Node link(int link) {
        return new Node(Part.LINK, link);
    }
}
