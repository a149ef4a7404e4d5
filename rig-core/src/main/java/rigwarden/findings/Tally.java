package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rigwarden.findings.trace.Continuity;
import rigwarden.findings.trace.Following;
import rigwarden.findings.trace.Numbers;
import rigwarden.findings.trace.UnderCurrent;
import rigwarden.findings.trace.ZeroWatch;
import rigwarden.findings.trace.ZeroWatch.Stretch;
import rigwarden.program.Ended;
import rigwarden.quantity.Quantity;
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
    /** A reading beyond this part of the scale is no zero. */
    private static final double ZERO_SHARE = 0.005;
    private static final long SLOPE_NANOS = 10_000_000_000L;
    /** From this part of the rating an hour on a current flows; a zero, a tap's or a chip's own, is far below it. */
    private static final double FLOWS_C = 0.005;
    /** With less than this part of the current before, it has stopped: a cell that recovers has another slope than one that met its cut-off. */
    private static final double STILL_FLOWS = 0.5;

    private final Traced rig;
    private final Channel current;
    private final Optional<Channel> accumulated;
    private final Optional<Channel> ratio;
    private final Channel[] cells;
    private final Channel[] warm;
    private final Channel[] bodies;
    private final Optional<Channel> shuntBody;
    private final double zeroAmps;
    private final UnderCurrent under;
    private final Numbers now;
    private final Following following;
    private final ZeroWatch zero;
    private final List<StepSums> sums = new ArrayList<>();

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
    private double shuntSum;
    private double shuntHottest;
    private long scans;
    private long slopeNanos;
    private double slopeVolts;
    private double slopeAmps;
    private double slope;
    private double lowestNow;

    private static final StepFinding.Extreme NOWHERE_HIGH = new StepFinding.Extreme(Double.POSITIVE_INFINITY, "");
    private static final StepFinding.Extreme NOWHERE_LOW = new StepFinding.Extreme(Double.NEGATIVE_INFINITY, "");

    public Tally(Traced rig) {
        this(rig, new Numbers(rig));
    }

    /** With numbers that somebody else reads. */
    Tally(Traced rig, Numbers now) {
        this.rig = rig;
        this.now = now;
        following = new Following(now.cells().size(), now.sums());
        zero = new ZeroWatch(ZERO_SHARE * rig.channel(Role.CURRENT).highest());
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
        under = new UnderCurrent(FLOWS_C * rig.cells().ratedAmpHours());
        warm = rig.channels().stream()
                .filter(c -> c.quantity() == Quantity.TEMPERATURE && c.role() != Role.ROOM && !c.role().carried())
                .toArray(Channel[]::new);
    }

    /** Takes the next scan; marks of steps that begin or end in it come after it. */
    public void scan(Scan scan) {
        now.read(scan);
        seen(scan);
    }

    /** The same where its numbers have been read. */
    void seen(Scan scan) {
        zero.take(now);
        if (open) {
            following.take(now);
        }
        long before = lastNanos;
        lastNanos = scan.nanos();
        accumulatorCode = accumulated.map(sum -> code(scan, sum, accumulatorCode)).orElse(0L);
        ratioCode = ratio.map(clock -> code(scan, clock, ratioCode)).orElse(0L);
        if (reading(scan, current) instanceof Reading.Valid valid) {
            amps = valid.value();
        }
        if (open) {
            under.take(amps, lastNanos, before);
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
                under.warmth(valid.value());
            }
        }
        if (shuntBody.isPresent() && reading(scan, shuntBody.get()) instanceof Reading.Valid valid) {
            shuntSum += valid.value();
            shuntHottest = Math.max(shuntHottest, valid.value());
        }
        boolean flows = Math.abs(amps) >= STILL_FLOWS * Math.abs(slopeAmps);
        if (scan.nanos() - slopeNanos >= SLOPE_NANOS && Double.isFinite(lowestNow) && flows) {
            slope = (lowestNow - slopeVolts) / ((scan.nanos() - slopeNanos) * 1e-9);
            slopeNanos = scan.nanos();
            slopeVolts = lowestNow;
            slopeAmps = amps;
        }
    }

    /** A step began in the scan taken last. */
    public void begun(int number, String word) {
        open = true;
        following.begin(now);
        step = number;
        kind = word;
        sinceNanos = lastNanos;
        startCode = accumulatorCode;
        lowest = NOWHERE_HIGH;
        highest = NOWHERE_LOW;
        hottest = NOWHERE_LOW;
        under.begin();
        shuntSum = 0;
        shuntHottest = REFERENCE_C;
        scans = 0;
        slopeNanos = lastNanos;
        slopeVolts = Double.isFinite(lowestNow) ? lowestNow : 0;
        slopeAmps = 0;
        slope = 0;
    }

    /** The step that began last ended in the scan taken last. */
    public void ended(Ended by, boolean settled, Account account) {
        double shuntMean = scans == 0 || shuntBody.isEmpty() ? Double.NaN : shuntSum / scans;
        Continuity seen = following.end();
        sums.add(new StepSums(rig, step, kind, sinceNanos, lastNanos, under.nanos(), charge(seen, account), account, seen, ratioCode != 0, shuntMean,
                shuntHottest, lowest, highest, hottest, under.meanCelsius(), under.startAmps(), slope, by, settled));
        open = false;
    }

    /**
     * What the chip counted runs by its own clock and knows nothing of the current's calibrated zero; what was put in its place, from
     * currents, does.
     */
    private double charge(Continuity seen, Account account) {
        double seconds = (lastNanos - sinceNanos) * 1e-9;
        boolean followed = seen.blindSeconds() > 0;
        if (accumulated.isEmpty()) {
            return followed || account.nanos() == 0 ? (seen.countedCoulombs() + seen.guessedCoulombs()) / 3600 : account.ampHours();
        }
        double counted = followed ? seen.countedCoulombs() : (accumulatorCode - startCode) * accumulated.get().scale();
        double clock = ratio.map(channel -> channel.value(ratioCode)).orElse(1.0);
        return (counted * clock + zeroAmps * (seconds - seen.blindSeconds()) + seen.guessedCoulombs()) / 3600;
    }

    /** What was summed over the steps that have ended. */
    List<StepSums> sums() {
        return List.copyOf(sums);
    }

    /** The current's zero around each of them, as far as it is known by now. */
    List<Optional<Zero>> zeros() {
        return switch (rig) {
            case Rig own -> {
                List<Stretch> stretches = zero.found();
                yield sums.stream().map(s -> Zero.around(stretches, s.beganNanos(), s.endedNanos(), own.shunt().ampsPerCode())).toList();
            }
            case ForeignLog _ -> sums.stream().map(_ -> Optional.<Zero>empty()).toList();
        };
    }

    /** The steps that have ended, in order; a rest after one may still tell the current's zero in it. */
    public List<StepFinding> steps() {
        List<Optional<Zero>> zeros = zeros();
        return IntStream.range(0, sums.size()).mapToObj(i -> sums.get(i).finding(zeros.get(i))).toList();
    }
}
