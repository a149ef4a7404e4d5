package rigwarden.bus;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TroubleTest {
    /** As the library wraps it: the number is two causes deep. */
    private static final class Numbered extends IOException implements WithErrno {
        private static final long serialVersionUID = 1L;

        private final int number;

        Numbered(int number) {
            super("E/A-Fehler der Gegenstelle");
            this.number = number;
        }

        @Override
        public int errno() {
            return number;
        }
    }

    @ParameterizedTest
    @CsvSource({
        "121, NOT_ACKNOWLEDGED", "6, NOT_ACKNOWLEDGED", "16, HELD_BY_KERNEL", "11, ARBITRATION_LOST", "110, BUS_STUCK",
        "19, NODE_GONE", "9, NODE_GONE", "108, NODE_GONE", "95, NOT_SUPPORTED", "5, WIRE_ERROR", "77, UNNAMED"
    })
    void the_kernels_number_names_the_trouble_in_any_language(int errno, Trouble trouble) {
        RuntimeException thrown = new IllegalStateException("outer", new IllegalStateException("inner", new Numbered(errno)));

        assertThat(Trouble.of(thrown)).isEqualTo(trouble);
    }

    @Test
    void words_alone_name_nothing() {
        assertThat(Trouble.of(new IllegalStateException(new IOException("Remote I/O error")))).isEqualTo(Trouble.UNNAMED);
    }
}
