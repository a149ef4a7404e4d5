package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OperatorTest {
    @TempDir
    Path folder;

    private final AtomicLong nanos = new AtomicLong(5);
    private final Sessions sessions = new Sessions(nanos::get);

    @Test
    void only_the_passphrase_itself_matches_and_only_its_salted_hash_is_kept() throws Exception {
        Passphrase.set(folder, "four words for two".toCharArray());
        String once = Files.readString(folder.resolve("operator"));

        assertThat(Passphrase.matches(folder, "four words for two".toCharArray())).isTrue();
        assertThat(Passphrase.matches(folder, "four words for Two".toCharArray())).isFalse();
        assertThat(Passphrase.matches(folder, new char[0])).isFalse();

        assertThat(once).doesNotContain("four");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("operator"))))
                .isEqualTo("rw-------");
        Passphrase.set(folder, "four words for two".toCharArray());
        assertThat(Files.readString(folder.resolve("operator"))).isNotEqualTo(once);
    }

    @Test
    void where_none_is_set_or_the_file_is_damaged_nothing_matches() throws Exception {
        assertThat(Passphrase.matches(folder, "anything at all".toCharArray())).isFalse();

        Files.writeString(folder.resolve("operator"), "pbkdf2-hmac-sha256 0 AAAAAAAA AAAAAAAAAAAAAAAA\n");

        assertThat(Passphrase.matches(folder, "anything at all".toCharArray())).isFalse();
    }

    @Test
    void a_session_ends_half_an_hour_after_its_last_use() {
        String token = sessions.open();

        nanos.addAndGet(Sessions.LASTS_NANOS - 1);
        assertThat(sessions.holds(token)).isTrue();
        nanos.addAndGet(Sessions.LASTS_NANOS - 1);
        assertThat(sessions.holds(token)).isTrue();

        nanos.addAndGet(Sessions.LASTS_NANOS);
        assertThat(sessions.holds(token)).isFalse();
        assertThat(sessions.holds("made up")).isFalse();
    }
}
