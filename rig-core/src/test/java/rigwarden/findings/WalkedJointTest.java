package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A run with a bad joint during which a hand meter was walked along the bars. */
class WalkedJointTest {
    @Test
    void what_was_read_on_the_joint_itself_names_it_in_the_findings_of_the_run() {
        ModelNights.Night night = ModelNights.pack(3, 22, 0.99, ModelNights.loose(3, 0.3e-3), _ -> { });

        Finding finding = Findings.of(night.rig(), night.gathered(), Rating.usual(105),
                List.of(new Joints.Walked(2, 0.03e-3, 1, 0.003e-3), new Joints.Walked(3, 0.33e-3, 1, 0.003e-3),
                        new Joints.Walked(4, 0.03e-3, 1, 0.003e-3))).stream()
                .filter(f -> f.kind() == Kind.JOINT).findFirst().orElseThrow();

        assertThat(finding.answer()).as("%s", finding).isInstanceOfSatisfying(Answer.Named.class, named -> {
            assertThat(named.who()).isEqualTo("the joint between cells 3 and 4");
            assertThat(named.because()).contains("the hand meter reads 0.330 mΩ on the joint itself, on its likes 0.030 mΩ");
        });
        assertThat(finding.notes()).contains("by hand meter: bar 3–4 0.330 ± 0.003 mΩ, bar 2–3 0.030 ± 0.003 mΩ, bar 4–5 0.030 ± 0.003 mΩ");
    }
}
