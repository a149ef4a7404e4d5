package rigwarden.page;

import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rigwarden.live.AheadWords;
import rigwarden.live.Complaints;
import rigwarden.live.Doing;
import rigwarden.live.Laying;
import rigwarden.live.Nearest;
import rigwarden.live.Phase;
import rigwarden.live.Snapshot;
import rigwarden.live.Stretch;
import rigwarden.live.Watched;
import rigwarden.paper.Spots;
import rigwarden.paper.TripWords;
import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;
import rigwarden.warden.Reading;

/** Puts a snapshot into words. */
final class Words {
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final double CLOSED = 0.5;

    private final Watched run;
    private final Snapshot now;
    private final Map<String, String> words = new HashMap<>();
    private final Map<String, String> marks = new HashMap<>();

    private Words(Watched run, Snapshot now) {
        this.run = run;
        this.now = now;
    }

    /** Everything on the area Now that changes. */
    static View of(Watched run, Snapshot now) {
        Words words = new Words(run, now);
        words.told();
        words.measured();
        return new View(now.scan().number(), Map.copyOf(words.words), Map.copyOf(words.marks),
                Map.of("strip", Strip.draw(now), "steps", Strip.list(now)));
    }

    private void told() {
        Doing doing = now.doing();
        words.put("headline", headline(doing));
        words.put("elapsed", Spots.clock(now.elapsedNanos()));
        words.put("ends", now.forecast().map(f -> f.ends()).orElse("—"));
        words.put("when", now.forecast().map(f -> f.leftNanos().isPresent()
                ? "in about " + inTime(f.leftNanos().getAsLong())
                : "cannot be said").orElse("—"));
        words.put("basis", now.forecast().map(f -> f.basis()).orElse(""));
        words.put("whole", whole());
        words.put("nearest", now.nearest().map(this::nearest).orElse("nothing that has a limit can be read"));
        words.put("hottest", hottest());
        words.put("loose", LooseWords.of(run, Optional.of(now)));
        spots();
        words.put("ahead", now.ahead().map(a -> AheadWords.of(run.rig(), a)).orElse(
                doing.phase() == Phase.CURRENT ? "not said before ten minutes of current, or while the end of the step is open" : "—"));
        marks.put("ahead", now.ahead().map(a -> a.crosses() ? "crosses" : a.mayCross() ? "may" : "").orElse(""));
        words.put("left", now.left().words());
        words.put("trip", now.trip().map(t -> TripWords.of(run.rig(), t)).orElse(""));
        words.put("also", String.join(" ", now.also().stream().map(t -> TripWords.consequence(run.rig(), t)).toList()));
        words.put("notices", String.join(" · ", Stream.concat(run.undelivered().get().stream(), now.warnings().stream()
                .map(w -> w.rule().sentence() + " (" + Spots.of(run.rig(), w.where()) + ")")).toList()));
        words.put("instruments", String.join(" · ", run.complaints().newest().stream().map(this::complaint).toList()));
        words.put("health", health());
        marks.put("told", now.over() ? "over" : doing.phase().name().toLowerCase(Locale.ROOT));
        marks.put("left", now.left().care().name().toLowerCase(Locale.ROOT));
    }

    private void spots() {
        Optional<Spot> lies = run.laying().flatMap(Laying::last).map(Laying.Laid::spot);
        if (run.rig().channels(Role.LOOSE).isEmpty()) {
            return;
        }
        Spot.of(run.rig()).stream().filter(spot -> spot.part() != Spot.Part.OTHER).forEach(spot -> marks.put(PackDrawing.id(spot), lies.filter(spot::equals).isPresent() ? "here" : ""));
    }

    private String headline(Doing doing) {
        if (doing.phase() == Phase.TRIPPED) {
            return Stopping.held(now)
                    ? "Tripped, and NOT everything is off: emergency stop, then the mains of charger and load"
                    : "Tripped: everything is ordered off";
        }
        if (doing.phase() == Phase.FINISHED) {
            return "Over: " + doing.by().map(by -> switch (by) {
                case STOPPED -> "stopped by a person";
                case NEVER_FIT -> "gave up; the cells stayed, or became at once, too cold or too warm to go on";
                case NOT_CONTINUED -> "the run that was broken off did not go on: a condition for it was not met";
                case TRIPPED -> "tripped and cleared";
                case TAPER, CEILING, CUT_OFF, CHARGER, SINK, PROTECTION, SETTLED, PROVED, TIME, CHARGE_REACHED, CUT ->
                    "the programme has ended";
            }).orElse("") + ", everything open";
        }
        if (doing.step() == 0) {
            return "The run " + doing.phase().words();
        }
        String wait = now.waits() && doing.phase() == Phase.WAITING ? ": a cell is too warm or too cold to begin" : "";
        String current = doing.phase() == Phase.CURRENT
                ? Spots.say(", %.1f A %s the cells", Math.abs(doing.setAmps()), doing.setAmps() < 0 ? "out of" : "into")
                : doing.phase() == Phase.RESTING ? ": everything is open" : ": " + doing.phase().words() + wait;
        return capital(doing.kind().replace('_', ' ')) + current;
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    /** A real run also says the hour on the wall's clock; a rehearsal's hours pass faster than the wall's. */
    private String inTime(long nanos) {
        String span = Spots.span(nanos);
        return run.rehearsal()
                ? span
                : span + ", at " + LocalTime.now(ZoneId.systemDefault()).plusNanos(nanos).format(HOUR);
    }

    private String whole() {
        Doing doing = now.doing();
        int steps = run.program().steps().size();
        if (now.over() || doing.phase() == Phase.FINISHED || doing.phase() == Phase.TRIPPED) {
            return Spots.say("Step %d of %d was the last.", doing.step(), steps);
        }
        long end = now.strip().stream().mapToLong(Stretch::endNanos).max().orElse(now.scan().nanos());
        return Spots.say("Step %d of %d; the whole programme ends in about ", doing.step(), steps)
                + inTime(end - now.scan().nanos()) + ".";
    }

    private String nearest(Nearest near) {
        Channel where = near.where();
        Quantity quantity = where.quantity();
        String u = near.uncertainty() > 0 ? " ± " + Spots.value(quantity, near.uncertainty()) : "";
        return Spots.say("%s: %s at %s%s, trips at %s; %.0f %% of the way left", near.words(), Spots.of(run.rig(), where),
                Spots.value(quantity, near.reads()), u, Spots.value(quantity, near.limit()),
                100 * Math.max(0, near.share()));
    }

    private String hottest() {
        Optional<Channel> hottest = run.rig().channels().stream()
                .filter(c -> c.quantity() == Quantity.TEMPERATURE && c.role() != Role.ROOM)
                .filter(c -> value(c).isPresent())
                .max(Comparator.comparingDouble(c -> value(c).orElseThrow()));
        return hottest.map(c -> Spots.of(run.rig(), c) + ", " + Spots.value(c.quantity(), value(c).orElseThrow())
                + overRoom(value(c).orElseThrow()) + changed(c)).orElse("no temperature can be read");
    }

    private String overRoom(double celsius) {
        return run.rig().channels(Role.ROOM).stream().findFirst().flatMap(this::value)
                .map(room -> Spots.say(", %.1f K over the room", celsius - room)).orElse("");
    }

    private String changed(Channel channel) {
        String change = trend(channel);
        return change.isEmpty() ? "" : change.equals("steady") ? ", steady" : ", " + change + " in the last minute";
    }

    private String health() {
        String unseen = now.unseen() > 0 ? Spots.say(" This view missed %d scans; all are stored.", now.unseen()) : "";
        return Spots.say("Scan %d.", now.scan().number()) + unseen
                + run.live().trouble().map(t -> " This view is not whole: " + t).orElse("");
    }

    private String complaint(Complaints.Complaint one) {
        long nanos = one.nanos() - now.originNanos();
        return one.words() + (nanos < 0 ? " (before the start)" : " (at " + Spots.clock(nanos) + ")");
    }

    private void measured() {
        for (Channel channel : run.rig().channels()) {
            String text = value(channel).map(v -> text(channel, v)).orElse("no reading");
            words.put("v-" + channel.name(), text);
            words.put("t-" + channel.name(), trend(channel));
            if (channel.quantity() == Quantity.SWITCH) {
                marks.put("v-" + channel.name(), value(channel).map(v -> v > CLOSED ? "on" : "off").orElse("unknown"));
            }
        }
    }

    private String text(Channel channel, double value) {
        return switch (channel.role()) {
            case CELL_VOLTS -> Spots.number(3, value);
            case BODY, STUD, BAR -> Spots.number(1, value) + "°" + arrow(channel);
            case SHUNT_BODY, CONTACTOR_BODY, ROOM, LOOSE -> Spots.value(channel.quantity(), value) + arrow(channel);
            case FEEDBACK -> value > CLOSED ? "closed" : "open";
            case LOOP, COIL_FEED, ARM, SOURCE_ON, SINK_ON -> value > CLOSED ? "on" : "off";
            case CURRENT, ACCUMULATED, CLOCK_RATIO, PACK_VOLTS, TAP_VOLTS, BUS_VOLTS, SOURCE_VOLTS, SOURCE_AMPS, SINK_VOLTS,
                    SINK_AMPS, RECORDER_LAG, FREE_SPACE, LATENESS -> Spots.value(channel.quantity(), value);
        };
    }

    private String arrow(Channel channel) {
        var change = now.trends().get(channel.index());
        return change.isPresent() ? Spots.arrow(change.getAsDouble()) : "";
    }

    private String trend(Channel channel) {
        var change = now.trends().get(channel.index());
        return change.isPresent() ? Spots.change(channel.quantity(), change.getAsDouble()) : "";
    }

    private Optional<Double> value(Channel channel) {
        return now.scan().readings().get(channel.index()) instanceof Reading.Valid valid
                ? Optional.of(valid.value())
                : Optional.empty();
    }
}
