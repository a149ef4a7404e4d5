package rigwarden.paper;

import java.util.List;

/** The cautions, said alike wherever a person must have read them: before a rig's first run, on its drawing, in the guide. */
public final class CautionWords {
    private CautionWords() {}

    /** One caution each. */
    public static List<String> all() {
        return List.of(
                "Large cells can weld a dropped spanner, burn, and start fires.",
                "Insulated tools, no jewellery, eye protection, covered terminals; a non-combustible bench with a smoke alarm, away from"
                        + " where people sleep; know how to cut the power and leave: gas from a venting cell burns and is toxic.",
                "Rigwarden is a second line of defence and is not certified safety equipment: fuse, hard-wired emergency stop, thermal"
                        + " cut-out and the battery's own protection must work with the computer dead, and are tried first.",
                "The makers' instructions for cells and equipment come before any default here; the tighter limit wins.",
                "Contactors must be rated to break this current at this d.c. voltage in both directions, sources and sinks for"
                        + " continuous duty.",
                "Mains wiring, and anything installed in a building, vehicle or boat, is subject to local codes and is work for a"
                        + " licensed person.",
                "Nothing that Rigwarden prints is a certificate.");
    }
}
