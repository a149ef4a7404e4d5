package rigwarden.notice;

import java.time.Instant;
import java.util.UUID;

/**
 * One thing told to a person elsewhere.
 *
 * @param id the same however often it is sent, so that a receiver can tell a repetition
 * @param what what it is about
 * @param title one line
 * @param words some sentences
 * @param run number of the run; 0 where it belongs to none
 * @param rehearsal whether every part of that run is emulated
 * @param nextMinutes when the next check-in should come, min after this one; 0 where none will
 * @param at when it happened
 */
public record Notice(UUID id, What what, String title, String words, int run, boolean rehearsal, int nextMinutes, Instant at) {
    /** A person's trial. */
    public static Notice test(Instant at) {
        return new Notice(UUID.randomUUID(), What.TEST, "Rigwarden: a test",
                "This is a test that a person asked for at the rig. Nothing has happened.", 0, false, 0, at);
    }

    /** The whole as plain text. */
    String text() {
        return title + "\n\n" + words + "\n\n" + at + "\n";
    }
}
