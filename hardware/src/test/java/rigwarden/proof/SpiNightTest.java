package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.*;
import org.junit.jupiter.api.Test;
import rigwarden.emulated.*;
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
        Program p = new Program("short", false, List.of(new Step.Discharge(1, 90, 2.50)));
        Rehearsal r = new Rehearsal(RIG, p, 3, List.of(), Bench.NOWHERE);
        Bench.until(r, () -> Bench.flowing(r, 1));
        Bench.seconds(r, 60);
        Map<String, ChipPlace> chips = new LinkedHashMap<>();
        chips.put("shunt", ChipPlace.of(RIG.shunt()));
        chips.put("adc", ChipPlace.of(RIG.inputs().get(0).converter()));
        RIG.probes().forEach(q -> chips.put(q.name(), ChipPlace.of(q.chip())));
        chips.put("expander", ChipPlace.of(RIG.wires().expanders().get(0)));
        for (var c : chips.entrySet()) for (ChipFault f : List.of(ChipFault.Plain.STUCK, ChipFault.Plain.NO_ANSWER, ChipFault.Plain.BROWN_OUT, ChipFault.Plain.ALL_ONES)) {
            List<String> log = new ArrayList<>();
            int[] failed = new int[RIG.channels().size()]; String[] why = new String[failed.length];
            int[] k = {0};
            Rehearsal q = r.copy((scan, _, _, _) -> {
                k[0]++;
                for (int i = 0; i < failed.length; i++) if (scan.readings().get(i) instanceof Reading.Failed x) { failed[i]++; why[i] = x.why() + "@" + k[0]; }
            });
            double t0 = q.rig().clock().nanos() * 1e-9;
            q.inflict(new BoardFault.ChipFails(c.getValue(), f));
            for (int i = 0; i < 100 && log.isEmpty(); i++) for (Event e : q.scan()) log.add(String.format("%.2f s %s", q.rig().clock().nanos() * 1e-9 - t0, e));
            Bench.seconds(q, 2);
            StringBuilder b = new StringBuilder();
            for (int i = 0; i < failed.length; i++) if (failed[i] > 0) b.append(RIG.channels().get(i).name() + " " + failed[i] + " " + why[i] + "; ");
            System.out.println(c.getKey() + " " + f + " => " + log + " amps " + q.rig().world().amps() + " | " + b);
        }
    }
}
