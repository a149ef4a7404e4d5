package rigwarden.prove;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Failure;
import rigwarden.warden.Scan;
import rigwarden.warden.Scans;

/** A rig at rest as a proof sees it, changed scan by scan, and all that the proof says. */
final class Bedside {
    static final double CELL_V = 3.3;

    final Rig rig;
    final List<Outcome> outcomes = new ArrayList<>();
    /** What is different from a sound rig at rest, in every scan from now on. */
    Consumer<Scans> twist = _ -> { };
    Turn last = Turn.asks(new Prompt.Watch(""));
    private long number;

    Bedside(Rig rig) {
        this.rig = rig;
    }

    long nanos() {
        return number * rig.scanNanos();
    }

    Scan scan() {
        number++;
        Scans scans = new Scans(rig, nanos());
        seated(scans, studs());
        twist.accept(scans);
        return scans.scan(number);
    }

    /** Each tap on the stud of its own cell. */
    int[] studs() {
        return rig.channels(Role.TAP_VOLTS).stream().mapToInt(Channel::cell).toArray();
    }

    /** Taps of an eight-cell rig on these studs, as islands of four with inputs that end at nothing and at their reach show them. */
    void seated(Scans scans, int... studs) {
        List<Channel> taps = rig.channels(Role.TAP_VOLTS);
        double[] shown = new double[taps.size()];
        for (int i = 0; i < shown.length; i++) {
            int ground = taps.get(i).cell() <= 4 ? 0 : 4;
            shown[i] = Math.clamp((studs[i] - ground) * CELL_V, 0, taps.get(i).highest());
            read(scans, shown, i);
        }
    }

    /** These voltages at the taps, and the cells as their differences. */
    void read(Scans scans, double[] shown, int tap) {
        Channel channel = rig.channels(Role.TAP_VOLTS).get(tap);
        scans.set(channel, shown[tap]);
        double below = (channel.cell() - 1) % 4 == 0 ? 0 : shown[tap - 1];
        scans.set(rig.channels(Role.CELL_VOLTS).get(tap), shown[tap] - below);
    }

    /** One scan into a stage. */
    Turn take(Stage stage, Answer answer) {
        last = stage.take(scan(), answer);
        outcomes.addAll(last.outcomes());
        return last;
    }

    /** Scans until the stage is over, or for so long, s. */
    Bedside take(Stage stage, double seconds) {
        long end = nanos() + Math.round(seconds * 1e9);
        while (nanos() < end && !last.over()) {
            take(stage, Answer.NONE);
        }
        return this;
    }

    static Consumer<Scans> set(Rig rig, String column, double value) {
        return scans -> scans.set(rig.column(column).orElseThrow(), value);
    }

    static Consumer<Scans> failed(Rig rig, String column) {
        return scans -> scans.failed(rig.column(column).orElseThrow(), Failure.NO_ANSWER, 1);
    }

    /** What was found wrong, in words. */
    List<String> wrong() {
        return outcomes.stream().filter(Outcome::spoils).map(o -> o.kind() + ": " + o.words()).toList();
    }
}
