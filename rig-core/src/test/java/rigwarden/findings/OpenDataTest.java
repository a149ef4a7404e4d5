package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import rigwarden.elsewhere.BroughtIn;
import rigwarden.elsewhere.OpenData;

class OpenDataTest {
    @Test
    void probe() {
        for (String[] one : new String[][] {{"open-lfp-26650-discharge", "ocv_25C_script1_discharge_C30.csv.gz"},
            {"open-lfp-26650-charge", "ocv_25C_script3_charge_C30.csv.gz"}, {"open-lfp-26650-held-charge", "cccv_charge_25C_1C.csv.gz"}, {"open-lfp-26650-pulses", "periodic_pulse_20A_25C.csv.gz"}}) {
            Path csv = OpenData.file("lfp-26650-25C", one[1]);
            for (BroughtIn in : new BroughtIn[] {BroughtIn.by(one[0], csv), BroughtIn.uncounted(one[0], csv)}) {
                System.out.println(one[1] + " " + in.survey() + " remarks " + in.remarks().size());
                in.remarks().stream().limit(5).forEach(System.out::println);
                in.gathered().steps().stream().limit(8).forEach(s -> System.out.println(s.sums() + "\n   " + s.continuity()));
                StepNotes last = in.gathered().steps().getLast();
                Findings.of(in.log(), in.gathered(), Rating.usual(2.5)).stream().filter(f -> f.kind() == Kind.RESISTANCE && !(f.answer() instanceof Answer.Refused)).limit(5).forEach(System.out::println);
            }
        }
        assertThat(1).isEqualTo(1);
    }
}
