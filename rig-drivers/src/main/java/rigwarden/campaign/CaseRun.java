package rigwarden.campaign;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Stream;
import rigwarden.campaign.Outcome.Noticed;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.Node;
import rigwarden.pack.Threshold;
import rigwarden.pack.World;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.warden.Rule;
import rigwarden.warden.Warden;

/** Runs one case to its end. */
final class CaseRun {
    private static final double NANO = 1e-9;
    private static final double MARGIN = 1.1;
    private static final double FLOWS_A = 1;
    /** After its end a run is looked at for so long: contacts weld when they open, and warmth comes late. */
    private static final double AFTER_S = 30;
    private static final long NEAR_SCANS = 100;
    /** A step that ends by the same as the healthy one within half a minute has ended as it should. */
    private static final long END_SCANS = 300;

    private final Case what;
    private final Rehearsal rehearsal;
    private final World world;
    private final Judge judge;
    private final HardwareWatch hardware;
    private final List<Threshold> limits;
    private final long afterScans;
    private long scan;
    private long faultNanos;
    private int strikes;
    private Optional<Rule> tripped = Optional.empty();
    private Optional<Rule> noticed = Optional.empty();
    private double tripSeconds;
    private double noticeSeconds;
    private Optional<String> thrown = Optional.empty();
    private boolean endedOtherwise;
    private final int cells;
    /** When a body was first seen at its limit, which is below that of every other node. */
    private OptionalLong warmNanos = OptionalLong.empty();

    /** The scan in which somebody presses STOP; {@link Long#MAX_VALUE} where nobody does. */
    private final long stopScan;
    private boolean stoppedTooLate;

    private CaseRun(Case what, Rehearsal rehearsal, long stopScan) {
        this.what = what;
        this.rehearsal = rehearsal;
        this.stopScan = stopScan;
        world = rehearsal.rig().world();
        judge = new Judge(what.night().scene().rig());
        hardware = new HardwareWatch(rehearsal);
        Rig rig = what.night().scene().rig();
        cells = rig.cells().series();
        limits = List.of(new Threshold.CellAbove(Envelope.HIGH_TRIP_V), new Threshold.CellBelow(Envelope.LOW_TRIP_V),
                new Threshold.NodeAbove(Envelope.TERMINAL_TRIP_C),
                new Threshold.AmpsBeyond(MARGIN * Math.max(rig.chargeCeilingAmps(), rig.dischargeCeilingAmps())));
        afterScans = Math.round(AFTER_S * 1e9 / rig.scanNanos());
        scan = what.firstScan();
    }

    static Outcome of(Case what) {
        return new CaseRun(what, what.night().at(what.firstScan()), Long.MAX_VALUE).run();
    }

    /**
     * The same case with STOP pressed in the very scan in which its last fault comes, watched to the case's last scan: no order could be earlier. A fault
     * that only came when something was unsafe already had no part in it, and is left out.
     */
    static Outcome stopped(Case what) {
        CaseRun run = new CaseRun(what, what.night().at(what.firstScan()), what.strikes().getLast().scan());
        Outcome outcome = run.run();
        return run.stoppedTooLate && what.strikes().size() > 1 ? stopped(what.first(what.strikes().size() - 1)) : outcome;
    }

    /** The same case under another warden. */
    static Outcome of(Case what, Warden judge) {
        return new CaseRun(what, what.night().at(what.firstScan(), judge), Long.MAX_VALUE).run();
    }

    private Outcome run() {
        rehearsal.rig().catchUp();
        world.resetOracle();
        limits.forEach(world::watch);
        faultNanos = world.nanos();
        long over = 0;
        while (scan < what.endScan() && over < afterScans) {
            boolean struck = strike();
            if (scan == stopScan) {
                stoppedTooLate = !judge.harms().isEmpty();
                rehearsal.stop();
            }
            scan(struck);
            scan++;
            boolean ended = rehearsal.over() || thrown.isPresent();
            over = ended && stopScan == Long.MAX_VALUE ? over + 1 : 0;
        }
        return outcome();
    }

    private boolean strike() {
        boolean struck = false;
        for (Strike strike : what.strikes()) {
            if (strike.scan() == scan) {
                faultNanos = rehearsal.rig().clock().nanos();
                rehearsal.inflict(strike.what().fault());
                struck = true;
                strikes++;
            }
        }
        return struck;
    }

    private void scan(boolean struck) {
        try {
            rehearsal.scan().forEach(this::take);
        } catch (RuntimeException e) {
            thrown = thrown.or(() -> Optional.of(e + " at " + (e.getStackTrace().length == 0 ? "?" : e.getStackTrace()[0])));
        }
        judge.look(rehearsal, struck);
        for (int k = 0; k < cells && warmNanos.isEmpty(); k++) {
            if (world.celsius(Node.body(k)) >= Envelope.DISCHARGING_HIGH_TRIP_C) {
                warmNanos = OptionalLong.of(world.nanos());
            }
        }
        if (tripped.isEmpty()) {
            hardware.look(rehearsal);
        }
    }

    private void take(Event event) {
        if (event instanceof Event.Tripped trip && tripped.isEmpty()) {
            tripped = Optional.of(trip.first().rule());
            tripSeconds = (rehearsal.rig().clock().nanos() - faultNanos) * NANO;
        } else if (event instanceof Event.Warned warned && noticed.isEmpty()
                && !what.night().told(warned.warning().rule().number())) {
            noticed = Optional.of(warned.warning().rule());
            noticeSeconds = (rehearsal.rig().clock().nanos() - faultNanos) * NANO;
        } else if (event instanceof Event.StepEnded ended) {
            endedOtherwise |= !what.night().endedNear(ended, scan, END_SCANS);
        }
    }

    private Outcome outcome() {
        Noticed how = tripped.isPresent() ? Noticed.TRIPPED
                : noticed.isPresent() ? Noticed.NOTICE
                : held() ? Noticed.HELD : Noticed.UNSEEN;
        OptionalDouble seconds = tripped.isPresent() ? OptionalDouble.of(tripSeconds)
                : noticed.isPresent() ? OptionalDouble.of(noticeSeconds) : OptionalDouble.empty();
        OptionalLong crossed = Stream.concat(limits.stream().map(world.oracle()::crossedNanos), Stream.of(warmNanos))
                .flatMapToLong(OptionalLong::stream).min();
        return new Outcome(what, strikes, judge.harms(), how, tripped.or(() -> noticed), seconds, hardware.acted(), crossed.isPresent(),
                crossed.isPresent() ? safe(crossed.getAsLong()) : OptionalDouble.empty(), world.oracle().highestCellVolts(),
                world.oracle().lowestCellVolts(), world.oracle().hottestCelsius(), thrown);
    }

    private OptionalDouble safe(long crossed) {
        if (Math.abs(world.amps()) > FLOWS_A) {
            return OptionalDouble.empty();
        }
        long last = world.oracle().lastAmpsNanos().orElse(crossed);
        return OptionalDouble.of(Math.max(0, (last - crossed) * NANO));
    }

    /** Whether the run stands elsewhere than the healthy one, which was not about to move just then. */
    private boolean held() {
        return thrown.isPresent() || endedOtherwise || !Night.place(rehearsal).equals(what.night().placeAt(scan)) && !what.night().turnsNear(scan, NEAR_SCANS);
    }
}
