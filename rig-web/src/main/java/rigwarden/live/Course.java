package rigwarden.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Event;
import rigwarden.warden.Closing;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;
import rigwarden.warden.Trip;

/** Follows a run through its programme, from the same records that the logbook gets. */
final class Course {
    /** Voltage under load at which a discharge ends, about, V. */
    private static final double EMPTY_CELL_V = 2.65;

    private final Program program;
    private final List<Device> devices;
    private final Channel current;
    private final List<Stretch> past = new ArrayList<>();
    private final Falling falling = new Falling();
    private final Warming warming;
    private final Channel pack;
    private final int cells;
    private Level level;
    private Doing doing = Doing.NOTHING;
    private boolean inStep;
    private boolean started;
    private boolean waited;
    private Optional<Trip> trip = Optional.empty();
    private List<Trip> also = List.of();
    private long lastNanos = -1;
    private double lastAmps;
    private double packVolts = Double.NaN;

    Course(Rig rig, Program program) {
        this.program = program;
        devices = rig.devices();
        current = rig.channel(Role.CURRENT);
        pack = rig.channel(Role.PACK_VOLTS);
        cells = rig.cells().series();
        warming = new Warming(rig);
        level = Level.unknown(rig.cells().ratedAmpHours());
    }

    void take(Scan scan, Orders orders, List<Event> events) {
        flow(scan);
        events.forEach(event -> take(event, scan.nanos()));
        double set = orders instanceof Orders.Energised on ? flows(on) : 0;
        doing = new Doing(phase(orders), doing.step(), doing.kind(), doing.stepNanos(), set, doing.by());
        if (doing.phase() == Phase.CURRENT) {
            falling.take(scan.nanos(), Math.abs(set));
            warming.take(scan);
            packVolts = scan.readings().get(pack.index()) instanceof Reading.Valid valid ? valid.value() : packVolts;
        } else {
            warming.forget();
        }
    }

    /** What is told to a device that takes orders; what is measured of one that does as it likes. */
    private double flows(Orders.Energised on) {
        return devices.get(on.through()).switched() ? lastAmps : on.way().sign() * on.set().amps();
    }

    private void flow(Scan scan) {
        if (!(scan.readings().get(current.index()) instanceof Reading.Valid valid)) {
            return;
        }
        if (lastNanos >= 0) {
            level = level.flowed((valid.value() + lastAmps) / 2 * (scan.nanos() - lastNanos) / 3600e9);
        }
        lastNanos = scan.nanos();
        lastAmps = valid.value();
    }

    private void take(Event event, long nanos) {
        switch (event) {
            case Event.Started _ -> started = true;
            case Event.StepBegun begun -> begin(begun, nanos);
            case Event.StepEnded ended -> end(ended, nanos);
            case Event.Waited _ -> waited = true;
            case Event.Tripped tripped -> {
                trip = trip.or(() -> Optional.of(tripped.first()));
                also = tripped.also();
            }
            case Event.Cleared _ -> {
                trip = Optional.empty();
                also = List.of();
                started = false;
            }
            case Event.Finished finished ->
                doing = new Doing(Phase.FINISHED, doing.step(), doing.kind(), nanos, 0, Optional.of(finished.by()));
            case Event.Continued _, Event.NotContinued _, Event.HeartbeatProved _, Event.StopProved _, Event.NoLoadShown _, Event.Warned _, Event.StopRequested _ -> { }
        }
    }

    private void begin(Event.StepBegun begun, long nanos) {
        inStep = true;
        waited = false;
        level = level.stepBegun();
        falling.forget();
        warming.forget();
        doing = new Doing(Phase.WAITING, begun.step(), begun.kind(), nanos, 0, Optional.empty());
    }

    private void end(Event.StepEnded ended, long nanos) {
        inStep = false;
        level = level.stepEnded(program.steps().get(ended.step() - 1), ended.by());
        past.add(new Stretch(ended.step(), doing.kind(), Stretch.Place.PAST, doing.stepNanos(), nanos,
                Optional.of(ended.by())));
    }

    private Phase phase(Orders orders) {
        if (trip.isPresent()) {
            return Phase.TRIPPED;
        }
        if (doing.by().isPresent()) {
            return Phase.FINISHED;
        }
        if (!inStep) {
            return started ? Phase.PROVING : Phase.IDLE;
        }
        return switch (orders) {
            case Orders.Energised on -> on.stage() == Closing.CURRENT ? Phase.CURRENT : Phase.CLOSING;
            case Orders.Off _ -> step() instanceof Step.Rest ? Phase.RESTING : Phase.WAITING;
        };
    }

    private Step step() {
        return program.steps().get(doing.step() - 1);
    }

    private boolean switched(Step step) {
        return step instanceof Step.Flowing flowing && devices.get(flowing.through()).switched();
    }

    Doing doing() {
        return doing;
    }

    Level level() {
        return level;
    }

    Optional<Trip> trip() {
        return trip;
    }

    List<Trip> also() {
        return also;
    }

    /** Whether the cells' temperature keeps the step from beginning. */
    boolean waited() {
        return waited;
    }

    /** What will end the running step; none between and after steps. */
    Optional<Forecast> forecast(long nanos) {
        return inStep && trip.isEmpty()
                ? Optional.of(Endings.of(step(), switched(step()), doing, level, falling, nanos))
                : Optional.empty();
    }

    /** The place that the running step will bring nearest to its limit; none where there is no current, or no telling when it ends. */
    Optional<Ahead> ahead(long nanos) {
        if (!inStep || doing.phase() != Phase.CURRENT) {
            return Optional.empty();
        }
        OptionalLong left = forecast(nanos).map(Forecast::leftNanos).orElse(OptionalLong.empty());
        return left.isPresent() ? warming.nearest(doing.setAmps() > 0, growth(), left.getAsLong(), level.reversible()) : Optional.empty();
    }

    /** What a load of constant power makes of the heating until the cells are empty: its current goes with one over the voltage. */
    private double growth() {
        if (doing.setAmps() > 0 || !switched(step()) || Double.isNaN(packVolts)) {
            return 1;
        }
        double end = packVolts / (cells * EMPTY_CELL_V);
        return Math.max(1, end * end);
    }

    /** How the cells will be left; how they stand, when nothing more will come. */
    Left left() {
        boolean over = trip.isPresent() || doing.by().isPresent();
        return over ? Outlook.stands(level) : Outlook.left(program, Math.max(0, doing.step() - 1), level);
    }

    /** The night as one strip: what was, what is, what is to come. */
    List<Stretch> strip(long nanos) {
        List<Stretch> strip = new ArrayList<>(past);
        boolean over = trip.isPresent() || doing.by().isPresent();
        int next = inStep ? doing.step() - 1 : past.isEmpty() ? 0 : past.getLast().step();
        long at = nanos;
        List<Double> hours = Outlook.hours(program, Math.min(next, program.steps().size()), level);
        for (int i = 0; i < hours.size(); i++) {
            int step = next + i + 1;
            String kind = program.steps().get(step - 1).kind();
            long planned = Math.round(hours.get(i) * 3600e9);
            boolean now = inStep && i == 0;
            long begin = now ? doing.stepNanos() : at;
            long end = now ? at + forecast(nanos).map(f -> f.leftNanos().orElse(planned)).orElse(0L) : at + planned;
            Stretch.Place place = over ? Stretch.Place.DROPPED : now ? Stretch.Place.NOW : Stretch.Place.TO_COME;
            strip.add(new Stretch(step, kind, place, begin, end, Optional.<Ended>empty()));
            at = end;
        }
        return List.copyOf(strip);
    }
}
