package rigwarden.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rigwarden.calibration.MeterStatement;

/** A hand meter on a joint: what it finds, and what is out of family. */
class JointOhmsTest {
    private static final MeterStatement METER = new MeterStatement("hand meter", 0.01, 3, 0.0001, 0, 0.4, LocalDate.of(2026, 1, 1), 365);

    private static JointOhms bar(int place, double micro) {
        return new JointOhms("P" + place, "bar", micro * 1e-6, 2e-6);
    }

    /** By hand: 5 mV at 100 A; meter ± 0.35 mV and one count of 0.1 mV, current ± 1 A (k = 2), changed by 2 A. */
    @Test
    void five_millivolts_at_a_hundred_amperes_are_fifty_micro_ohms_with_their_doubt() {
        JointOhms joint = JointOhms.of("P1", "bar", -0.005, METER, new JointOhms.Current(-100, 1, 2));
        double meter = Math.hypot(3.5e-4, 1e-4) / Math.sqrt(3) / 100;
        double current = 50e-6 * Math.hypot(0.5, 2 / Math.sqrt(3)) / 100;

        assertThat(joint.ohms()).isEqualTo(50e-6, within(1e-12));
        assertThat(joint.expandedOhms()).isEqualTo(2 * Math.hypot(meter, current), within(1e-12));
    }

    /** Drawn within what is stated: inside at least as often as an exact binomial test at 1 % allows for 95.45 % of 2000. */
    @Test
    void the_truth_lies_inside_as_often_as_is_stated() {
        Random random = new Random(20_261_126);
        int inside = 0;
        for (int i = 0; i < 2000; i++) {
            double truth = 20e-6 + 200e-6 * random.nextDouble();
            double then = 100;
            double shown = truth * then * (1 + 0.01 * (2 * random.nextDouble() - 1)) + 3e-4 * (2 * random.nextDouble() - 1);
            double typed = 1e-4 * Math.rint((shown + 1e-4 * (random.nextDouble() - 0.5)) / 1e-4);
            double now = then + 2 * (2 * random.nextDouble() - 1) + 0.5 * random.nextGaussian();
            JointOhms joint = JointOhms.of("P1", "bar", typed, METER, new JointOhms.Current(now, 1, 2));
            inside += Math.abs(joint.ohms() - truth) <= joint.expandedOhms() ? 1 : 0;
        }

        assertThat(inside).isGreaterThanOrEqualTo(1887);
    }

    @Test
    void a_joint_far_above_its_likes_is_named_and_ranked_first_and_no_good_one_is() {
        List<JointOhms> joints = new ArrayList<>();
        for (int i = 1; i <= 7; i++) {
            joints.add(bar(i, 20 + i));
        }
        joints.add(bar(8, 90));
        joints.add(new JointOhms("P20", "lug", 200e-6, 2e-6));

        assertThat(Families.ranked(joints)).extracting(JointOhms::joint).startsWith("P20", "P8", "P7");
        assertThat(Families.outOfFamily(joints)).singleElement().asString().startsWith("P8 is out of family: 90 µΩ, its 7 likes have 24 µΩ");
    }

    @Test
    void three_joints_are_no_family_and_a_meter_too_coarse_names_nobody() {
        assertThat(Families.outOfFamily(List.of(bar(1, 20), bar(2, 21), bar(3, 200)))).isEmpty();
        List<JointOhms> coarse = List.of(bar(1, 20), bar(2, 21), bar(3, 22), new JointOhms("P4", "bar", 60e-6, 40e-6));
        assertThat(Families.outOfFamily(coarse)).isEmpty();
    }
}
