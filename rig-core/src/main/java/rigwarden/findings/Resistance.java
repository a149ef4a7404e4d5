package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Edge;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channel;
import rigwarden.rig.Channels;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;
import rigwarden.rig.VoltageInput;

/**
 * Direct-current resistance of one cell, with all that lies between its two taps: voltage over current of a step.
 *
 * @param cell its number, from 1
 * @param how in words: the currents, and the delay or the two-current method
 * @param seconds delay after the step; 0 for the two-current method
 * @param ohms with its budget
 * @param amps current before and after
 * @param budget in ohms
 * @param scan where it was measured
 */
public record Resistance(int cell, String how, double seconds, double ohms, double[] amps, Budget budget, long scan) {
    /** Each reading's own rounding, as a rectangle of one step: 1/√12 of it. */
    private static final double ROUNDING = Math.sqrt(12);

    /**
     * Of every cell, from a step at which the current stopped, at each delay that was caught. The contact opened somewhere between
     * two scans: the voltages are taken half a scan on and half a scan back, and the other half is in the budget.
     */
    static List<Resistance> atOpening(Traced rig, Edge edge) {
        double half = rig.scanNanos() * 1e-9 / 2;
        List<Resistance> found = new ArrayList<>();
        for (int i = 0; i < edge.after().size(); i++) {
            Edge.Moment after = edge.after().get(i);
            for (int cell = 0; cell < edge.before().volts().length; cell++) {
                double fall = half * edge.fallVoltsPerSecond()[cell];
                double rise = half * relaxation(edge, i, cell);
                String how = Words.say("%s to %s, after %.1f s", Words.side(edge.before().amps()), Words.side(after.amps()), after.nominalSeconds());
                double volts = edge.before().volts()[cell] + fall - (after.volts()[cell] - rise);
                one(rig, cell, how, after.seconds(), volts, edge.before().amps(), after.amps(), scatter(rig, edge, cell, 1),
                        Math.abs(fall) + Math.abs(rise), edge.scan()).ifPresent(found::add);
            }
        }
        return found;
    }

    /**
     * By two currents: the voltage at the end of the first and at the end of the second, both under load (IEC 61960-3:2017,
     * 7.7.3, from memory).
     */
    static List<Resistance> byTwoCurrents(Traced rig, Edge rise, Edge drop) {
        List<Resistance> found = new ArrayList<>();
        for (int cell = 0; cell < rise.before().volts().length; cell++) {
            String how = Words.say("two currents, %s and %s", Words.side(rise.before().amps()), Words.side(drop.before().amps()));
            double late = (Math.abs(rise.fallVoltsPerSecond()[cell]) + Math.abs(drop.fallVoltsPerSecond()[cell]))
                    * rig.scanNanos() * 1e-9;
            double volts = rise.before().volts()[cell] - drop.before().volts()[cell];
            Scatter first = scatter(rig, rise, cell, 0);
            Scatter second = scatter(rig, drop, cell, 0);
            one(rig, cell, how, 0, volts, rise.before().amps(), drop.before().amps(), first.and(second), late, rise.scan())
                    .ifPresent(found::add);
        }
        return found;
    }

    /** The method's own arithmetic: (U1 − U2) / (I2 − I1), discharge currents as magnitudes; Ω. */
    public static double twoCurrents(double volts1, double volts2, double amps1, double amps2) {
        return (volts1 - volts2) / (amps2 - amps1);
    }

    /** How fast a cell recovers around a moment, V/s. */
    private static double relaxation(Edge edge, int at, int cell) {
        int other = at + 1 < edge.after().size() ? at + 1 : at - 1;
        if (other < 0) {
            return 0;
        }
        Edge.Moment a = edge.after().get(at);
        Edge.Moment b = edge.after().get(other);
        return (b.volts()[cell] - a.volts()[cell]) / (b.seconds() - a.seconds());
    }

    /** Standard deviation of a voltage difference by scatter and rounding of the readings, V. */
    private record Scatter(double volts, int freedom) {
        Scatter and(Scatter other) {
            return new Scatter(Math.hypot(volts, other.volts), Math.min(freedom, other.freedom));
        }
    }

    /** Of the line before, one row beyond its rows, and of so many single readings after. */
    private static Scatter scatter(Traced rig, Edge edge, int cell, int readings) {
        double each = Math.max(edge.noiseVolts()[cell], Taps.of(rig, rig.channels(Role.CELL_VOLTS).get(cell)).step() / ROUNDING);
        return new Scatter(Math.hypot(edge.extrapolation(), Math.sqrt(readings)) * each, edge.freedom());
    }

    private static Optional<Resistance> one(Traced rig, int cell, String how, double seconds, double volts, double ampsBefore,
            double ampsAfter, Scatter scatter, double lateVolts, long scan) {
        double amps = ampsBefore - ampsAfter;
        if (Double.isNaN(volts) || Double.isNaN(scatter.volts()) || Math.abs(amps) < 1) {
            return Optional.empty();
        }
        double ohms = volts / amps;
        Taps taps = Taps.of(rig, rig.channels(Role.CELL_VOLTS).get(cell));
        double per = 1 / Math.abs(amps);
        List<Budget.Term> terms = List.of(
                Budget.standard(Nature.TAPS, "tap gain", taps.gain() * Math.abs(ohms)),
                new Budget.Term("noise and rounding of the taps", scatter.volts() * per, scatter.freedom()),
                Budget.limits("instant of the reading", lateVolts * per),
                current(rig, Math.abs(ohms)));
        return Optional.of(new Resistance(cell + 1, how, seconds, ohms, new double[] {ampsBefore, ampsAfter},
                new Budget(terms), scan));
    }

    /** A step of the current knows no zero: only what grows with the current counts. */
    static Budget.Term current(Traced traced, double ohms) {
        return switch (traced) {
            case Rig rig -> rig.calibration(Calibratable.CURRENT)
                    .map(found -> Budget.standard(Nature.GAIN, "the current's calibration", found.doubt().gainU() / 2 * ohms))
                    .orElseGet(() -> Budget.limits(Nature.GAIN, "shunt and amplifier gain",
                            Math.hypot(rig.shunt().toleranceRelative(), Channels.INA228_GAIN) * ohms));
            case ForeignLog log -> Budget.limits(Nature.GAIN, Budgets.FOREIGN_SCALE, log.gainLimits() * ohms);
        };
    }

    /** Standard gain error of a cell's voltage difference, relative, and the step of its readings, V. */
    private record Taps(double gain, double step) {
        static Taps of(Traced traced, Channel cell) {
            return switch (traced) {
                case Rig rig -> of(rig, cell);
                case ForeignLog log -> new Taps(cell.gainU() / 2, log.step(cell));
            };
        }

        private static Taps of(Rig rig, Channel cell) {
            if (cell.gainU() > 0) {
                return new Taps(cell.gainU() / 2, cell.scale());
            }
            Optional<VoltageInput> upper = rig.inputs().stream()
                    .filter(i -> i.role() == Role.TAP_VOLTS && i.cell() == cell.cell()).findFirst();
            if (upper.isEmpty()) {
                return new Taps(0, cell.scale());
            }
            Optional<VoltageInput> lower = Channels.below(upper.get(), rig.inputs());
            int place = 1;
            for (Optional<VoltageInput> next = lower; next.isPresent(); next = Channels.below(next.get(), rig.inputs())) {
                place++;
            }
            double up = place * gainU(rig, upper.get());
            double down = lower.isPresent() ? (place - 1) * gainU(rig, lower.get()) : 0;
            return new Taps(Math.hypot(up, down) / 2, Math.hypot(step(rig, upper.get()), lower.map(l -> step(rig, l)).orElse(0.0)));
        }

        private static double gainU(Rig rig, VoltageInput tap) {
            return rig.column(tap.name()).map(Channel::gainU).orElse(0.0);
        }

        private static double step(Rig rig, VoltageInput tap) {
            return rig.column(tap.name()).map(Channel::scale).orElse(0.0);
        }
    }

    /** Resolution of a cell's voltage, V: of its tap and of the one below together. */
    static double resolution(Traced rig, Channel cell) {
        return Math.max(cell.scale(), Taps.of(rig, cell).step());
    }

    Finding finding() {
        return new Finding(Kind.RESISTANCE, "cell " + cell, new Answer.Value(ohms * 1000, "mΩ", budget.times(1000)), List.of(how),
                List.of("with all that lies between its two taps; never to be held against a 1 kHz value"), scan, scan);
    }
}
