package rigwarden.warden;

/** What a rule does. */
public enum Severity {
    /** Said, nothing more. */
    WARNS,
    /** Everything off, latched. */
    TRIPS,
    /** Everything off, latched; the first contactor did not obey, so that only a new proof clears it. */
    TRIPS_UNTIL_PROVED
}
