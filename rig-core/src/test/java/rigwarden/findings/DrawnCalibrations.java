package rigwarden.findings;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import rigwarden.pack.Chance;
import rigwarden.rig.Calibratable;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/** A third of the model rigs is calibrated; what is left of each line is drawn from its own stated doubt. */
final class DrawnCalibrations {
    private static final int ONE_OF = 3;

    private DrawnCalibrations() {}

    /**
     * What a calibrated reading truly is, from what it shows: its errors about the pivot, height and slope apart, so that the gain's
     * and the zero's errors are correlated as the line makes them.
     *
     * @param gain relative error that grows with the reading
     * @param zero error that does not, in the channel's unit
     */
    record Left(double gain, double zero) {}

    /** Whether the rig of a seed is one of the third. */
    static boolean has(long seed) {
        return seed % ONE_OF == 0;
    }

    /** The rig as it is, or with its current and each directly read cell calibrated. */
    static Rig of(Rig rig, long seed) {
        if (!has(seed)) {
            return rig;
        }
        Chance chance = Chance.of(seed, "model rig", "calibrations");
        List<ChannelCalibration> all = new ArrayList<>();
        all.add(found(Calibratable.CURRENT, limits(chance, 0.002), limits(chance, 0.02),
                new Doubt(-10, 2e-3, 1e-4, 5e-4, rig.shunt().thermoVolts() / rig.shunt().ohms() + 2e-3, 1e-4, -60, 50, 0.003),
                OptionalDouble.of(25)));
        for (VoltageInput input : rig.inputs()) {
            if (input.divider() == 1 && input.cell() == 1) {
                all.add(found(input.name(), limits(chance, 0.001), limits(chance, 1e-3),
                        new Doubt(3.1, 1e-4, 1e-4, 2e-4, 2e-4, 0, 2.5, 3.6, 0.002), OptionalDouble.empty()));
            }
        }
        return rig.calibrated(all);
    }

    private static ChannelCalibration found(String channel, double gain, double offset, Doubt doubt, OptionalDouble celsius) {
        return new ChannelCalibration(channel, 1 + gain, offset, doubt, LocalDate.of(2026, 1, 1), LocalDate.of(2027, 1, 1), celsius,
                OptionalLong.empty(), "");
    }

    /** Errors of one line, out of its doubt. */
    static Left left(Doubt doubt, Chance chance) {
        double height = doubt.heightU() * chance.nextGaussian();
        double slope = doubt.slopeU() * chance.nextGaussian();
        double scale = limits(chance, doubt.scaleLimits()) + doubt.certificateU() * chance.nextGaussian();
        return new Left(slope + scale, height - slope * doubt.pivot() + limits(chance, doubt.zeroLimits()));
    }

    static double limits(Chance chance, double half) {
        return half * (2 * chance.nextDouble() - 1);
    }
}
