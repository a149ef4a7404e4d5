package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Continuity;
import rigwarden.program.Ended;
import rigwarden.quantity.Quantity;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;
import rigwarden.run.Account;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * Turns a stream of scans and step marks into one finding a step. Fed live or from a run file, it gives the same.
 *
 * <p>Charge is the difference of the sensor's own accumulator, times its scale, times the ratio of host to chip clock:
 * the chip sees every conversion, the host only one in ten a second. Of a sensor without an accumulator the charge is the
 * host's own sum, and its budget says what may lie between two readings.
 */
public final class Tally {
    /** A shunt that nobody saw is taken for as warm as this, °C. */
    private static final double REFERENCE_C = 25;
    private static final long MINUTE = 60_000_000_000L;
    private static final long SLOPE_NANOS = 10_000_000_000L;

    private final Traced rig;
    private final Channel current;
    private final Optional<Channel> accumulated;
    private final Optional<Channel> ratio;
    private final Channel[] cells;
    private final Channel[] warm;
    private final Channel[] bodies;
    private final Optional<Channel> shuntBody;
    private final double zeroAmps;
    private final List<StepFinding> found = new ArrayList<>();

    private long accumulatorCode;
    private long ratioCode;
    private double amps;
    private long lastNanos;
    private boolean open;
    private int step;
    private String kind = "";
    private long sinceNanos;
    private long startCode;
    private StepFinding.Extreme lowest = NOWHERE_HIGH;
    private StepFinding.Extreme highest = NOWHERE_LOW;
    private StepFinding.Extreme hottest = NOWHERE_LOW;
    private double bodySum;
    private long bodyReadings;
    private double shuntSum;
    private double shuntHottest;
    private long scans;
    private double startAmps;
    private long slopeNanos;
    private double slopeVolts;
    private double slope;
    private double lowestNow;

    private static final StepFinding.Extreme NOWHERE_HIGH = new StepFinding.Extreme(Double.POSITIVE_INFINITY, "");
    private static final StepFinding.Extreme NOWHERE_LOW = new StepFinding.Extreme(Double.NEGATIVE_INFINITY, "");

    public Tally(Traced rig) {
        this.rig = rig;
        current = rig.channel(Role.CURRENT);
        accumulated = rig.possible(Role.ACCUMULATED);
        ratio = rig.possible(Role.CLOCK_RATIO);
        cells = rig.channels(Role.CELL_VOLTS).toArray(Channel[]::new);
        bodies = rig.channels(Role.BODY).toArray(Channel[]::new);
        shuntBody = rig.possible(Role.SHUNT_BODY);
        zeroAmps = switch (rig) {
            case Rig own -> own.calibration(Calibratable.CURRENT).map(ChannelCalibration::offset).orElse(0.0);
            case ForeignLog _ -> 0;
        };
        warm = rig.channels().stream()
                .filter(c -> c.quantity() == Quantity.TEMPERATURE && c.role() != Role.ROOM && !c.role().carried())
                .toArray(Channel[]::new);
    }

    /** Takes the next scan; marks of steps that begin or end in it come after it. */
    public void scan(Scan scan) {
        lastNanos = scan.nanos();
        accumulatorCode = accumulated.map(sum -> code(scan, sum, accumulatorCode)).orElse(0L);
        ratioCode = ratio.map(clock -> code(scan, clock, ratioCode)).orElse(0L);
        if (reading(scan, current) instanceof Reading.Valid valid) {
            amps = valid.value();
        }
        if (open) {
            extremes(scan);
        }
    }

    private static long code(Scan scan, Channel channel, long before) {
        return reading(scan, channel) instanceof Reading.Valid valid ? valid.code() : before;
    }

    private static Reading reading(Scan scan, Channel channel) {
        return scan.readings().get(channel.index());
    }

    private void extremes(Scan scan) {
        scans++;
        lowestNow = Double.POSITIVE_INFINITY;
        for (Channel cell : cells) {
            if (reading(scan, cell) instanceof Reading.Valid valid) {
                lowestNow = Math.min(lowestNow, valid.value());
                if (valid.value() < lowest.value()) {
                    lowest = new StepFinding.Extreme(valid.value(), cell.name());
                }
                if (valid.value() > highest.value()) {
                    highest = new StepFinding.Extreme(valid.value(), cell.name());
                }
            }
        }
        for (Channel place : warm) {
            if (reading(scan, place) instanceof Reading.Valid valid && valid.value() > hottest.value()) {
                hottest = new StepFinding.Extreme(valid.value(), place.name());
            }
        }
        for (Channel body : bodies) {
            if (reading(scan, body) instanceof Reading.Valid valid) {
                bodySum += valid.value();
                bodyReadings++;
            }
        }
        if (shuntBody.isPresent() && reading(scan, shuntBody.get()) instanceof Reading.Valid valid) {
            shuntSum += valid.value();
            shuntHottest = Math.max(shuntHottest, valid.value());
        }
        if (scan.nanos() - sinceNanos <= MINUTE) {
            startAmps = amps;
        }
        if (scan.nanos() - slopeNanos >= SLOPE_NANOS && Double.isFinite(lowestNow)) {
            slope = (lowestNow - slopeVolts) / ((scan.nanos() - slopeNanos) * 1e-9);
            slopeNanos = scan.nanos();
            slopeVolts = lowestNow;
        }
    }

    /** A step began in the scan taken last. */
    public void begun(int number, String word) {
        open = true;
        step = number;
        kind = word;
        sinceNanos = lastNanos;
        startCode = accumulatorCode;
        lowest = NOWHERE_HIGH;
        highest = NOWHERE_LOW;
        hottest = NOWHERE_LOW;
        bodySum = 0;
        bodyReadings = 0;
        shuntSum = 0;
        shuntHottest = REFERENCE_C;
        scans = 0;
        startAmps = 0;
        slopeNanos = lastNanos;
        slopeVolts = Double.isFinite(lowestNow) ? lowestNow : 0;
        slope = 0;
    }

    /** The step that began last ended in the scan taken last. */
    public void ended(Ended by, boolean settled, Account account) {
        ended(by, settled, account, Optional.empty());
    }

    /**
     * The same with what was seen of the count.
     *
     * @param seen how well the count could be followed; empty where nobody followed it, and it is believed from end to end
     */
    void ended(Ended by, boolean settled, Account account, Optional<Continuity> seen) {
        double seconds = (lastNanos - sinceNanos) * 1e-9;
        double trapezoid = account.ampHours();
        double charge = seen.filter(row -> Charge.blind(row) || accumulated.isEmpty() && account.nanos() == 0).map(row -> followed(row, seconds)).orElseGet(() -> counted(seconds, trapezoid));
        double shuntMean = scans == 0 || shuntBody.isEmpty() ? Double.NaN : shuntSum / scans;
        Budget sound = ChargeBudget.of(rig, charge, seconds, ratioCode != 0, shuntMean, shuntHottest);
        Budget budget = seen.filter(Charge::blind).map(row -> Charge.bounded(sound, row)).orElse(sound);
        boolean comparable = Math.abs(trapezoid) > 0.001 * rig.cells().ratedAmpHours();
        double energy = account.wattHours() * (comparable ? charge / trapezoid : 1);
        found.add(new StepFinding(step, kind, seconds, new Uncertain(charge, budget.expanded()), budget, trapezoid,
                new Uncertain(energy, energyU(energy, charge, budget, seconds)), lowest, highest, hottest,
                bodyReadings == 0 ? Double.NaN : bodySum / bodyReadings, startAmps, slope, by, settled));
        open = false;
    }

    private double clock() {
        return ratio.map(channel -> channel.value(ratioCode)).orElse(1.0);
    }

    private double counted(double seconds, double trapezoid) {
        return accumulated.map(sum -> ((accumulatorCode - startCode) * sum.scale() * clock() + zeroAmps * seconds) / 3600).orElse(trapezoid);
    }

    /** What the chip counted runs by its own clock and knows nothing of the current's zero; what was put in its place, from currents, does. */
    private double followed(Continuity seen, double seconds) {
        double chip = accumulated.isEmpty() ? seen.countedCoulombs()
                : seen.countedCoulombs() * clock() + zeroAmps * (seconds - seen.blindSeconds());
        return (chip + seen.guessedCoulombs()) / 3600;
    }

    private double energyU(double energy, double charge, Budget budget, double seconds) {
        double volts = Math.abs(charge) < 1e-3 ? 3.3 * cells.length : Math.abs(energy / charge);
        double byCharge = budget.expanded() * volts;
        double byTaps = 0;
        for (Channel cell : cells) {
            double volt = volts / cells.length;
            byTaps += cell.uncertainty(volt) * Math.abs(charge);
        }
        double rounding = 1e-6 * seconds / 3600;
        return Math.sqrt(byCharge * byCharge + byTaps * byTaps + rounding * rounding);
    }

    /** The steps that have ended, in order. */
    public List<StepFinding> steps() {
        return List.copyOf(found);
    }
}
