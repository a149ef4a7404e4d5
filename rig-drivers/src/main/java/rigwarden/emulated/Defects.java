package rigwarden.emulated;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

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
    /** Bead on which each probe's wires are. */
    final int[] beadOf;
    final boolean[] probeReversed;
    /** Stud on which a tap's lead is, where it is not its own. */
    final Map<Integer, Integer> studOf = new HashMap<>();
    /** Share of the bar above its stud behind which a tap's lead sits. */
    final Map<Integer, Double> onBar = new HashMap<>();
    /** What a device's own meter makes of its volts, by its place in the rig's list. */
    final Map<Integer, Double> meterFactor = new HashMap<>();
    final Set<Integer> bridged = new HashSet<>();
    double shuntOffsetVolts;
    /** What the chip's sum misses of that from before it began, V·s. */
    double shuntOffsetVoltSeconds;
    /** What the links add to that as soon as they are plugged in, V. */
    double linkVolts;
    boolean loopForgets;
    /** A regulator that runs away takes its own protection with it: the worst case. */
    boolean protectionDead;

    Defects(int probes, int inputs) {
        probeOpen = new boolean[probes];
        probeShorted = new boolean[probes];
        probeKelvin = new double[probes];
        inputFactor = new double[inputs];
        Arrays.fill(inputFactor, 1);
        beadOf = IntStream.range(0, probes).toArray();
        probeReversed = new boolean[probes];
    }

    /** From this instant on the shunt's reading is off by so much more, V. */
    void shift(double volts, long nanos) {
        shuntOffsetVolts += volts;
        shuntOffsetVoltSeconds -= volts * nanos * 1e-9;
    }

    int stud(int tap) {
        return studOf.getOrDefault(tap, tap);
    }

    Defects copy() {
        Defects copy = new Defects(probeOpen.length, inputFactor.length);
        System.arraycopy(probeOpen, 0, copy.probeOpen, 0, probeOpen.length);
        System.arraycopy(probeShorted, 0, copy.probeShorted, 0, probeShorted.length);
        System.arraycopy(probeKelvin, 0, copy.probeKelvin, 0, probeKelvin.length);
        System.arraycopy(inputFactor, 0, copy.inputFactor, 0, inputFactor.length);
        copy.stuckLines.putAll(stuckLines);
        System.arraycopy(beadOf, 0, copy.beadOf, 0, beadOf.length);
        System.arraycopy(probeReversed, 0, copy.probeReversed, 0, probeReversed.length);
        copy.studOf.putAll(studOf);
        copy.onBar.putAll(onBar);
        copy.meterFactor.putAll(meterFactor);
        copy.bridged.addAll(bridged);
        copy.shuntOffsetVolts = shuntOffsetVolts;
        copy.shuntOffsetVoltSeconds = shuntOffsetVoltSeconds;
        copy.linkVolts = linkVolts;
        copy.loopForgets = loopForgets;
        copy.shuntFactor = shuntFactor;
        copy.shuntCoulombs = shuntCoulombs;
        copy.protectionDead = protectionDead;
        return copy;
    }
}
