package rigwarden.pack;

/** Places that have a temperature. */
public enum Place {
    BODY,
    STUD_POSITIVE,
    STUD_NEGATIVE,
    SHUNT,
    CONTACTOR,
    ROOM
}
