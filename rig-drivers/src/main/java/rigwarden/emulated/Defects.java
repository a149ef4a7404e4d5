package rigwarden.emulated;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/** What is wrong between the world and the wire of one rig: factors, offsets, lines that stay. */
final class Defects {
    final boolean[] probeOpen;
    final boolean[] probeShorted;
    final double[] probeKelvin;
    final double[] inputFactor;
    final Map<Integer, Boolean> stuckLines = new HashMap<>();
    double shuntFactor = 1;
    /** What the shunt has weighed before it drifted, less what it would have weighed since, C. */
    double shuntCoulombs;
    /** A regulator that runs away takes its own protection with it: the worst case. */
    boolean protectionDead;

    Defects(int probes, int inputs) {
        probeOpen = new boolean[probes];
        probeShorted = new boolean[probes];
        probeKelvin = new double[probes];
        inputFactor = new double[inputs];
        Arrays.fill(inputFactor, 1);
    }

    Defects copy() {
        Defects copy = new Defects(probeOpen.length, inputFactor.length);
        System.arraycopy(probeOpen, 0, copy.probeOpen, 0, probeOpen.length);
        System.arraycopy(probeShorted, 0, copy.probeShorted, 0, probeShorted.length);
        System.arraycopy(probeKelvin, 0, copy.probeKelvin, 0, probeKelvin.length);
        System.arraycopy(inputFactor, 0, copy.inputFactor, 0, inputFactor.length);
        copy.stuckLines.putAll(stuckLines);
        copy.shuntFactor = shuntFactor;
        copy.shuntCoulombs = shuntCoulombs;
        copy.protectionDead = protectionDead;
        return copy;
    }
}
