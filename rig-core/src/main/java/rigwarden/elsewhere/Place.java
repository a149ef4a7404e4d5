package rigwarden.elsewhere;

import java.util.Locale;
import rigwarden.rig.Role;

/** What a column of a log is of. */
public enum Place {
    CELL(Role.CELL_VOLTS),
    BODY(Role.BODY),
    STUD(Role.STUD),
    BAR(Role.BAR),
    ROOM(Role.ROOM);

    private final Role role;

    Place(Role role) {
        this.role = role;
    }

    Role role() {
        return role;
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
