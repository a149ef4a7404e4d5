package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.emulated.Rehearsal;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.run.Event;
import rigwarden.warden.Reading;

class SpiNightTest {
    static final Rig RIG = ((Read.Sound<Rig>) RigFile.read(Bench.RIGS.resolve("one-cell-spi.toml"))).value();

    @Test
    void probe() throws Exception {
        Program p = new Program("short", false, List.of(new Step.Charge(0, 21, 3.60, 5.25), new Step.Rest(60_000_000_000L, 80_000_000_000L),
            new Step.Discharge(1, 52.5, 2.50)));
        long[] n = {0};
        Rehearsal r = new Rehearsal(RIG, p, 3, List.of(), (scan, _, _, _) -> {
            n[0]++;
            if (n[0] < 6 || n[0] == 300) {
                for (int i = 0; i < scan.readings().size(); i++) {
                    System.out.println(n[0] + " " + RIG.channels().get(i).name() + " " + scan.readings().get(i));
                }
            }
        });
        long t = System.nanoTime();
        while (!r.over() && n[0] < 400_000) {
            for (Event e : r.scan()) System.out.println(n[0] + " " + e);
        }
        System.out.println(n[0] + " scans " + (System.nanoTime() - t) / 1e9 + " s");
    }
}
