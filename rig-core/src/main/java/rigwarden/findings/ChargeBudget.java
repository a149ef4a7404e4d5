package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.ShuntMonitor;
import rigwarden.rig.Traced;

/** What the charge of a step is uncertain by: the instruments, and what lies between their readings. */
final class ChargeBudget {
    /** Standard uncertainty of the learnt clock ratio: 20 ppm at most. */
    private static final double RATIO_U = 20e-6;
    /** The same before it is learnt: the chip's oscillator limits ± 0.5 % (SLYS021A, electrical characteristics). */
    private static final double RATIO_LIMITS = 0.005;
    /**
     * What the current may do between two readings, relative: this project's assumption, as much as two sums may differ
     * where a chip has one of its own.
     */
    private static final double BETWEEN = 0.003;
    private static final double REFERENCE_C = 25;
    /** The shunt's ends are warmed otherwise by a current than at rest, where the zero was read: two voltages of the same limits. */
    private static final double AT_REST_AND_UNDER_CURRENT = Math.sqrt(2);

    private ChargeBudget() {}

    /**
     * Of a charge.
     *
     * @param charge Ah
     * @param seconds that it took
     * @param clockLearnt whether the ratio of host to chip clock was known
     * @param shuntMean mean temperature of the shunt's body, °C; NaN where nobody saw it
     * @param shuntHottest highest, °C
     * @param zero of the current, where it was read before and after and is taken off
     */
    static Budget of(Traced traced, double charge, double seconds, boolean clockLearnt, double shuntMean, double shuntHottest,
            Optional<Zero> zero) {
        double hours = seconds / 3600;
        List<Budget.Term> terms = new ArrayList<>();
        switch (traced) {
            case Rig rig -> rig(rig, charge, hours, shuntMean, shuntHottest, zero, terms);
            case ForeignLog log -> {
                terms.add(Budget.limits(Nature.GAIN, Budgets.FOREIGN_SCALE, log.gainLimits() * charge));
                terms.add(Budget.limits(Nature.OFFSET, Budgets.FOREIGN_ZERO, log.offsetLimitsAmps() * hours));
            }
        }
        Optional<Channel> accumulated = traced.possible(Role.ACCUMULATED);
        if (accumulated.isEmpty()) {
            terms.add(Budget.limits(Nature.WANDERING, "current between the readings", BETWEEN * Math.abs(charge)));
            terms.add(Budget.limits("resolution", step(traced, traced.channel(Role.CURRENT)) / 2 * hours));
        } else {
            if (traced.possible(Role.CLOCK_RATIO).isPresent()) {
                terms.add(clockLearnt
                        ? Budget.standard(Nature.CLOCK, "clock ratio", RATIO_U * charge)
                        : Budget.limits(Nature.CLOCK, "chip clock, not learnt", RATIO_LIMITS * charge));
            }
            terms.add(Budget.limits("resolution", step(traced, accumulated.get()) / 3600));
        }
        return new Budget(terms);
    }

    private static double step(Traced traced, Channel channel) {
        return switch (traced) {
            case Rig rig -> channel.role() == Role.CURRENT ? rig.shunt().ampsPerCode() : channel.scale();
            case ForeignLog log -> log.step(channel);
        };
    }

    private static void rig(Rig rig, double charge, double hours, double shuntMean, double shuntHottest, Optional<Zero> zero,
            List<Budget.Term> terms) {
        ShuntMonitor shunt = rig.shunt();
        Optional<ChannelCalibration> calibration = rig.calibration(Calibratable.CURRENT);
        double reference = calibration.map(found -> found.shuntCelsius().orElse(REFERENCE_C)).orElse(REFERENCE_C);
        double mean = shuntMean - reference;
        double hottest = shuntHottest - reference;
        double away = Double.isNaN(shuntMean) ? 0 : Math.abs(mean) > Math.abs(hottest) ? mean : hottest;
        terms.addAll(calibration.map(found -> CalibratedCharge.gains(found.doubt(), charge, hours, zero.isPresent())).orElseGet(() -> List.of(
                Budget.limits(Nature.GAIN, "shunt tolerance", shunt.toleranceRelative() * charge),
                Budget.limits(Nature.GAIN, "amplifier gain", shunt.chip().gain() * charge))));
        terms.add(1, Budget.limits(Nature.WARMTH, "shunt temperature", shunt.perKelvin() * away * charge));
        double thermo = shunt.thermoVolts() / shunt.ohms() * hours;
        terms.addAll(zero.map(found -> List.of(
                Budget.standard(Nature.WANDERING, "current's zero at rest", found.standardAmps() * hours),
                Budget.limits(Nature.WANDERING, "thermo-electric voltage", AT_REST_AND_UNDER_CURRENT * thermo)))
                .orElseGet(() -> calibration.map(found -> CalibratedCharge.zeros(found.doubt(), hours)).orElseGet(() -> List.of(
                        Budget.limits(Nature.OFFSET, "amplifier offset", shunt.chip().offsetVolts() / shunt.ohms() * hours),
                        Budget.limits(Nature.WANDERING, "thermo-electric voltage", thermo)))));
    }
}
