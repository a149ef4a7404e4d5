package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.program.Ended;
import rigwarden.quantity.Quantity;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.ShuntMonitor;
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
    private static final long MINUTE = 60_000_000_000L;
    private static final long SLOPE_NANOS = 10_000_000_000L;

    private final Rig rig;
    private final Channel current;
    private final Optional<Channel> accumulated;
    private final Optional<Channel> ratio;
    private final Channel[] cells;
    private final Channel[] warm;
    private final Channel[] bodies;
    private final Channel shuntBody;
    private final Optional<ChannelCalibration> calibration;
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

    public Tally(Rig rig) {
        this.rig = rig;
        current = rig.channel(Role.CURRENT);
        accumulated = rig.possible(Role.ACCUMULATED);
        ratio = rig.possible(Role.CLOCK_RATIO);
        cells = rig.channels(Role.CELL_VOLTS).toArray(Channel[]::new);
        bodies = rig.channels(Role.BODY).toArray(Channel[]::new);
        shuntBody = rig.channel(Role.SHUNT_BODY);
        calibration = rig.calibration(Calibratable.CURRENT);
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
            bodySum += reading(scan, body) instanceof Reading.Valid valid ? valid.value() / bodies.length : 0;
        }
        if (reading(scan, shuntBody) instanceof Reading.Valid valid) {
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
        double seconds = (lastNanos - sinceNanos) * 1e-9;
        double trapezoid = account.ampHours();
        double zero = calibration.map(ChannelCalibration::offset).orElse(0.0);
        double charge = accumulated.isEmpty() || ratio.isEmpty() ? trapezoid
                : ((accumulatorCode - startCode) * accumulated.get().scale() * ratio.get().value(ratioCode) + zero * seconds) / 3600;
        Budget budget = chargeBudget(charge, seconds);
        boolean comparable = Math.abs(trapezoid) > 0.001 * rig.cells().ratedAmpHours();
        double energy = account.wattHours() * (comparable ? charge / trapezoid : 1);
        found.add(new StepFinding(step, kind, seconds, new Uncertain(charge, budget.expanded()), budget, trapezoid,
                new Uncertain(energy, energyU(energy, charge, budget, seconds)), lowest, highest, hottest,
                scans == 0 ? 0 : bodySum / scans, startAmps, slope, by, settled));
        open = false;
    }

    private Budget chargeBudget(double charge, double seconds) {
        ShuntMonitor shunt = rig.shunt();
        double hours = seconds / 3600;
        double reference = calibration.map(found -> found.shuntCelsius().orElse(REFERENCE_C)).orElse(REFERENCE_C);
        double away = scans == 0 ? 0 : Math.max(Math.abs(shuntSum / scans - reference), Math.abs(shuntHottest - reference));
        List<Budget.Term> terms = new ArrayList<>(calibration
                .map(found -> CalibratedCharge.terms(found.doubt(), charge, hours)).orElseGet(() -> List.of(
                        Budget.limits("shunt tolerance", shunt.toleranceRelative() * charge),
                        Budget.limits("amplifier gain", shunt.chip().gain() * charge),
                        Budget.limits("amplifier offset", shunt.chip().offsetVolts() / shunt.ohms() * hours),
                        Budget.limits("thermo-electric voltage", shunt.thermoVolts() / shunt.ohms() * hours))));
        terms.add(1, Budget.limits("shunt temperature", shunt.perKelvin() * away * charge));
        if (accumulated.isEmpty()) {
            terms.add(Budget.limits("current between the readings", BETWEEN * charge));
            terms.add(Budget.limits("resolution", shunt.ampsPerCode() / 2 * hours));
        } else {
            terms.add(ratioCode == 0
                    ? Budget.limits("chip clock, not learnt", RATIO_LIMITS * charge)
                    : Budget.standard("clock ratio", RATIO_U * charge));
            terms.add(Budget.limits("resolution", accumulated.get().scale() / 3600));
        }
        return new Budget(terms);
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
