package rigwarden.prove;

/** What the person is asked for. */
public sealed interface Prompt {
    /** In words, for a terminal or a page. */
    String words();

    /** Touch nothing. */
    record Watch(String words) implements Prompt {}

    /** Say whether something is so. */
    record Confirm(String words) implements Prompt {}

    /** Warm one probe between two fingers; its place in the rig file, from 0. */
    record Warm(int probe, String words) implements Prompt {}

    /** Open one contact of the loop; its place in the rig file, from 0. */
    record Press(int contact, String words) implements Prompt {}

    /** Let that contact close again, reset nothing, and say so. */
    record Release(int contact, String words) implements Prompt {}

    /** Reset the latched loop. */
    record Reset(String words) implements Prompt {}

    /** Plug in what will be plugged in at night, and say so. */
    record Plug(String words) implements Prompt {}
}
