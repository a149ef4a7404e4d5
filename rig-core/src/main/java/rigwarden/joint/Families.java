package rigwarden.joint;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Ranks joints, and names those that are unlike their likes: a bar is compared with bars, a lug with lugs. */
public final class Families {
    /** Sound joints of one make differ by so much, standard deviation, relative: this project's assumption. */
    private static final double SPREAD = 0.15;
    /** So many standard deviations make one out of family. */
    private static final double OUT = 3.5;
    /** Half of a normal family lies within its standard deviation divided by this. */
    private static final double NORMAL = 1.4826;
    private static final int LEAST = 4;

    private Families() {}

    /** The highest first. */
    public static List<JointOhms> ranked(List<JointOhms> joints) {
        return joints.stream().sorted(Comparator.comparingDouble(JointOhms::ohms).reversed()).toList();
    }

    /** One sentence for each joint that is above its family by more than chance and meter explain; the highest first. */
    public static List<String> outOfFamily(List<JointOhms> joints) {
        List<String> said = new ArrayList<>();
        for (JointOhms joint : ranked(joints)) {
            double[] likes = joints.stream().filter(other -> other.family().equals(joint.family()) && !other.joint().equals(joint.joint()))
                    .mapToDouble(JointOhms::ohms).sorted().toArray();
            if (likes.length >= LEAST - 1) {
                double middle = middle(likes);
                double spread = Math.max(SPREAD * middle, scatter(likes, middle));
                double u = joint.expandedOhms() / 2;
                if (joint.ohms() - middle > OUT * Math.hypot(spread, u)) {
                    said.add(String.format(Locale.ROOT, "%s is out of family: %.0f µΩ, its %d likes have %.0f µΩ in the middle. Clean it, torque it, and"
                            + " measure it again.", joint.joint(), joint.ohms() * 1e6, likes.length, middle * 1e6));
                }
            }
        }
        return List.copyOf(said);
    }

    private static double middle(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    private static double scatter(double[] sorted, double middle) {
        return NORMAL * middle(Arrays.stream(sorted).map(ohms -> Math.abs(ohms - middle)).sorted().toArray());
    }
}
