package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rigwarden.findings.trace.DeviceWatch;
import rigwarden.findings.trace.Edges;
import rigwarden.findings.trace.InOrder;
import rigwarden.findings.trace.KneeWatch;
import rigwarden.findings.trace.Numbers;
import rigwarden.findings.trace.RestWatch;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.SpotWatch;
import rigwarden.findings.trace.StepMark;
import rigwarden.findings.trace.Warmth;
import rigwarden.findings.trace.WarmthWatch;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;
import rigwarden.run.Account;
import rigwarden.warden.Scan;

/**
 * Takes the rows of a run one at a time, in any order that is not too wild, and gives what is kept of its steps. After a
 * restart a new one is fed from the run file, and live rows that overlap are taken once.
 */
public final class Trace {
    /** Current that moves a cell along its curve, A; of a small cell the same part of it as of a large one, 1/h. */
    private static final double FLOWS_AMPS = 0.5;
    private static final double FLOWS_C = 0.005;

    private final InOrder order = new InOrder(this::next);
    private final Tally tally;
    private final Numbers now;
    private final KneeWatch knees;
    private final WarmthWatch warmth;
    private final RestWatch rest;
    private final SpotWatch spots;
    private final DeviceWatch devices;
    private final CurveWatch curves;
    private final Edges edges;
    private final int room;
    private final List<StepNotes> steps = new ArrayList<>();
    private long rows;
    private boolean open;
    private double busJoules;
    private boolean busSeen;
    private double lastCoulombs;
    private double lastBusVolts;
    private double roomSum;
    private long roomCount;

    public Trace(Traced rig) {
        now = new Numbers(rig);
        tally = new Tally(rig, now);
        knees = new KneeWatch(now.cells().size(), Math.min(FLOWS_AMPS, FLOWS_C * rig.cells().ratedAmpHours()));
        warmth = new WarmthWatch(now.warm());
        rest = new RestWatch(now.cells().size());
        spots = new SpotWatch(rig, now.warm());
        devices = new DeviceWatch(rig);
        curves = new CurveWatch(rig);
        edges = new Edges(now.cells().size());
        room = now.warm().stream().map(Channel::role).toList().indexOf(Role.ROOM);
    }

    /** Takes a row; one that came before is left out. */
    public void take(Row row) {
        order.take(row);
    }

    private void next(Row row) {
        rows++;
        now.read(row.scan());
        tally.seen(row.scan());
        edges.take(now);
        spots.take(now);
        if (open) {
            knees.take(now);
            warmth.take(now);
            rest.take(now);
            devices.take(row.scan());
            curves.take(now);
            along();
        }
        for (StepMark mark : row.marks()) {
            switch (mark) {
                case StepMark.Begun begun -> begin(begun, row.scan());
                case StepMark.Laid laid -> spots.laid(laid.spot(), now);
                case StepMark.Over over -> end(over);
            }
        }
    }

    private void along() {
        busSeen &= !Double.isNaN(now.busVolts) && !Double.isNaN(now.coulombs);
        if (busSeen) {
            busJoules += (now.coulombs - lastCoulombs) * (now.busVolts + lastBusVolts) / 2;
            lastCoulombs = now.coulombs;
            lastBusVolts = now.busVolts;
        }
        if (room >= 0 && !Double.isNaN(now.celsius[room])) {
            roomSum += now.celsius[room];
            roomCount++;
        }
    }

    private void begin(StepMark.Begun begun, Scan scan) {
        open = true;
        tally.begun(begun.number(), begun.kind());
        edges.begun(begun.number(), begun.kind());
        spots.begun(begun.number());
        knees.begin(now);
        warmth.begin(now);
        rest.begin(now);
        devices.begin(scan);
        curves.begin(now);
        busJoules = 0;
        busSeen = !Double.isNaN(now.busVolts) && !Double.isNaN(now.coulombs);
        lastCoulombs = now.coulombs;
        lastBusVolts = now.busVolts;
        roomSum = 0;
        roomCount = 0;
    }

    private void end(StepMark.Over over) {
        if (!open) {
            return;
        }
        open = false;
        spots.over();
        tally.ended(over.by(), over.settled(), over.account());
        StepSums sums = tally.sums().getLast();
        steps.add(new StepNotes(sums.finding(Optional.empty()), sums.seen(), knees.end(), warmth.end(), rest.end(),
                busSeen ? busJoules / 3600 : Double.NaN, roomCount == 0 ? Double.NaN : roomSum / roomCount, Optional.empty(),
                devices.end(), curves.end()));
    }

    /** Temperatures of the step that runs, until now: what a forecast of its end is made of. */
    public List<Warmth> warmthNow() {
        return warmth.end();
    }

    /** No more rows come. A step that runs is taken as broken off with the last row; nobody knows its sums. */
    public Gathered end() {
        return end(Account.EMPTY);
    }

    /** The same, with the sums of a step that runs. */
    public Gathered end(Account broken) {
        order.end();
        end(new StepMark.Over(Ended.CUT, false, broken));
        List<StepFinding> better = tally.steps();
        List<Optional<Zero>> zeros = tally.zeros();
        List<StepNotes> known = IntStream.range(0, steps.size()).mapToObj(i -> steps.get(i).with(better.get(i), zeros.get(i))).toList();
        return new Gathered(known, edges.found(), rows, order.missing(), spots.end(), edges.dropped());
    }
}
