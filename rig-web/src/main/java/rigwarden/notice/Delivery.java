package rigwarden.notice;

/** What became of sending a notice once. */
public sealed interface Delivery {
    /** It was taken. */
    record Delivered(String words) implements Delivery {}

    /**
     * It was not taken.
     *
     * @param words why, without anything secret
     * @param refused whether the other end answered and refused this notice, so that the next may fare better
     */
    record Failed(String words, boolean refused) implements Delivery {}
}
