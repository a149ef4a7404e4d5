package rigwarden.campaign;

/** The outside list that a fault comes from. */
public enum Origin {
    /** What breaks in a part: ISO 13849-2, by {@link PartFault}. */
    COMPONENT("part"),
    /** What happens to a message: IEC 61784-3, by {@link rigwarden.emulated.WireError}. */
    COMMUNICATION("message"),
    /** Any byte on any wire. */
    MANGLER("mangler");

    private final String word;

    Origin(String word) {
        this.word = word;
    }

    /** As it stands in tables. */
    public String word() {
        return word;
    }
}
