package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import rigwarden.findings.number.Curve;
import rigwarden.findings.trace.Edge;
import rigwarden.rig.Channel;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/**
 * Resistance at the instant of a step of the current, in a log whose rows are too far apart to show it: the rows after it are
 * followed back by one exponential. When between two rows the current stepped nobody knows, and that is most of the doubt.
 */
final class Onset {
    /** Rows as close as this show the instant themselves, s. */
    private static final double CLOSE_SECONDS = 0.5;
    private static final int LEAST_ROWS = 6;
    /** Neighbouring residuals of a curve that is not quite the cell's are alike: so many count as one. */
    private static final double ALIKE = 4;

    private Onset() {}

    /** Of every cell; nothing for a rig of ours, which scans fast enough to show it. */
    static List<Finding> of(Traced traced, Edge edge) {
        return switch (traced) {
            case Rig _ -> List.of();
            case ForeignLog log -> of(log, edge);
        };
    }

    private static List<Finding> of(ForeignLog log, Edge edge) {
        List<Finding> found = new ArrayList<>();
        List<Channel> cells = log.channels(Role.CELL_VOLTS);
        if (log.scanNanos() * 1e-9 >= CLOSE_SECONDS && edge.trail().size() >= LEAST_ROWS) {
            for (int cell = 0; cell < cells.size(); cell++) {
                one(log, edge, cell, cells.get(cell)).ifPresent(found::add);
            }
        }
        return found;
    }

    private static Optional<Finding> one(ForeignLog log, Edge edge, int cell, Channel channel) {
        double half = log.scanNanos() * 1e-9 / 2;
        int rows = edge.trail().size();
        double[] seconds = new double[rows];
        double[] milliohms = new double[rows];
        for (int i = 0; i < rows; i++) {
            Edge.Moment row = edge.trail().get(i);
            seconds[i] = row.seconds() + half;
            milliohms[i] = 1000 * (edge.before().volts()[cell] - row.volts()[cell]) / (edge.before().amps() - row.amps());
            if (Double.isNaN(milliohms[i])) {
                return Optional.empty();
            }
        }
        return fit(seconds, milliohms).map(fit -> {
            double ohms = fit.parameters()[0];
            double perSecond = Math.abs(fit.parameters()[1] / fit.parameters()[2]);
            double step = 1000 * log.step(channel) / Math.sqrt(12) / Math.abs(edge.before().amps() - edge.trail().getFirst().amps());
            Budget budget = new Budget(List.of(
                    Budget.limits("instant of the step", half * perSecond),
                    new Budget.Term("the rows around the curve", Math.sqrt(ALIKE) * fit.standard(0), fit.freedom()),
                    Budget.standard("rounding of the voltages", step),
                    Budget.standard(Nature.TAPS, "tap gain", channel.gainU() / 2 * Math.abs(ohms)),
                    Resistance.current(log, Math.abs(ohms))));
            return new Finding(Kind.RESISTANCE, "cell " + channel.cell() + ", at the instant", new Answer.Value(ohms, "mΩ", budget),
                    List.of(Words.say("%s to %s, %d rows followed back", Words.side(edge.before().amps()), Words.side(edge.trail().getFirst().amps()), rows)),
                    List.of("with all that lies between its two taps; what settles faster than the rows is in it"), edge.scan(), edge.scan());
        });
    }

    private static Optional<Curve.Fit> fit(double[] seconds, double[] milliohms) {
        double rise = milliohms[milliohms.length - 1] - milliohms[0];
        Curve curve = (x, p) -> p[2].reciprocal().multiply(-x).exp().negate().add(1).multiply(p[1]).add(p[0]);
        try {
            Curve.Fit fit = curve.through(seconds, milliohms, milliohms[0] - rise / 4, rise * 1.3, seconds[seconds.length - 1] / 2);
            boolean sensible = fit.parameters()[2] > 0 && Double.isFinite(fit.standard(0));
            return sensible ? Optional.of(fit) : Optional.empty();
        } catch (MathRuntimeException _) {
            return Optional.empty();
        }
    }
}
