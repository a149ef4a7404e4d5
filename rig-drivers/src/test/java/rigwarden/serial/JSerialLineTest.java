package rigwarden.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.rig.RegisterMap;

class JSerialLineTest {
    @TempDir
    private Path folder;

    @Test
    void aPortThatIsNotThereIsLostAndNotAnException() {
        JSerialLine line = new JSerialLine(folder.resolve("gone").toString(),
                new Characters(115_200, RegisterMap.Parity.NONE, 1, 0));

        assertThat(line.open()).isFalse();
        assertThat(line.read(new byte[8])).isEqualTo(-1);
        assertThat(line.write(new byte[8], 8)).isZero();
        line.close();
    }
}
