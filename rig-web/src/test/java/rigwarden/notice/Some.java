package rigwarden.notice;

import java.time.Instant;
import java.util.UUID;

/** Notices for tests. */
final class Some {
    static final Instant NOON = Instant.parse("2026-01-02T12:00:00Z");

    private Some() {}

    static Notice notice(What what, String title) {
        return notice(what, title, NOON);
    }

    static Notice notice(What what, String title, Instant at) {
        return new Notice(UUID.nameUUIDFromBytes(title.getBytes(java.nio.charset.StandardCharsets.UTF_8)), what, title,
                "Words of " + title + ".", 12, true, 30, at);
    }
}
