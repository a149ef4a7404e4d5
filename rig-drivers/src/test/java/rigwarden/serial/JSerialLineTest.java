package rigwarden.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JSerialLineTest {
    @TempDir
    private Path folder;

    @Test
    void aPortThatIsNotThereIsLostAndNotAnException() {
        JSerialLine line = new JSerialLine(folder.resolve("gone").toString(), 115_200);

        assertThat(line.open()).isFalse();
        assertThat(line.read(new byte[8])).isEqualTo(-1);
        assertThat(line.write(new byte[8], 8)).isZero();
        line.close();
    }
}
