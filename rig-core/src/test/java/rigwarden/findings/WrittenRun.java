package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Account;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** Rows written by hand, from formulas of time: what the findings must make of them is known in closed form. */
final class WrittenRun {
    /** Less than this is what a shunt shows with the contactor open. */
    private static final double OPEN_AMPS = 0.1;

    private final Rig rig;
    private final double everySeconds;
    private final List<Row> rows = new ArrayList<>();
    private final List<StepMark> marks = new ArrayList<>();
    private double coulombs;
    private double seconds;
    private Account account = Account.EMPTY;

    WrittenRun(Rig rig, double everySeconds) {
        this.rig = rig;
        this.everySeconds = everySeconds;
    }

    /** A step: current, voltages by cell and temperature of everything as functions of the seconds since it began. */
    WrittenRun step(int number, String kind, double lasts, Ended by, DoubleUnaryOperator amps, DoubleUnaryOperator celsius,
            DoubleUnaryOperator... volts) {
        marks.add(new StepMark.Begun(number, kind));
        account = Account.EMPTY;
        int many = (int) Math.round(lasts / everySeconds);
        for (int i = 0; i <= many; i++) {
            double t = i * everySeconds;
            double current = i == many ? 0 : amps.applyAsDouble(t);
            if (i == many) {
                marks.add(new StepMark.Over(by, true, account));
            }
            write(current, celsius.applyAsDouble(t), Arrays.stream(volts).mapToDouble(v -> v.applyAsDouble(t)).toArray());
        }
        return this;
    }

    private void write(double amps, double celsius, double[] volts) {
        seconds += everySeconds;
        coulombs += amps * everySeconds;
        double sum = Arrays.stream(volts).sum() * rig.cells().series() / volts.length;
        account = account.plus(Math.round(everySeconds * 1e9), amps, amps * sum, sum);
        long nanos = Math.round(seconds * 1e9);
        List<Reading> readings = new ArrayList<>();
        int cell = 0;
        for (Channel channel : rig.channels()) {
            double value = switch (channel.role().quantity()) {
                case CURRENT -> channel.role() == Role.CURRENT ? amps : 0;
                case CHARGE -> coulombs;
                case TEMPERATURE -> celsius;
                case RATIO -> 1 + 2e-9;
                case VOLTAGE -> channel.role() == Role.CELL_VOLTS ? volts[cell++ % volts.length] : sum;
                case SWITCH -> Math.abs(amps) < OPEN_AMPS ? 0 : 1;
                case TIME, SIZE -> 0;
            };
            if (Double.isNaN(value)) {
                readings.add(new Reading.Failed(Failure.NO_ANSWER, nanos));
                continue;
            }
            readings.add(Reading.of(channel, Math.round((value - channel.shift()) / channel.scale()), nanos));
        }
        rows.add(new Row(new Scan(rows.size() + 1, nanos, List.copyOf(readings)), marks));
        marks.clear();
    }

    List<Row> rows() {
        return List.copyOf(rows);
    }

    /** The same rows with a channel that never says anything. */
    static List<Row> without(List<Row> rows, Channel channel) {
        return rows.stream().map(row -> {
            List<Reading> readings = new ArrayList<>(row.scan().readings());
            readings.set(channel.index(), new Reading.Failed(Failure.NO_ANSWER, 0));
            return new Row(new Scan(row.scan().number(), row.scan().nanos(), List.copyOf(readings)), row.marks());
        }).toList();
    }

    /** The same rows with a contactor that is called open whatever flows. */
    static List<Row> open(Rig rig, List<Row> rows) {
        Channel feedback = rig.channel(Role.FEEDBACK);
        return rows.stream().map(row -> {
            List<Reading> readings = new ArrayList<>(row.scan().readings());
            readings.set(feedback.index(), Reading.of(feedback, 0, row.scan().nanos()));
            return new Row(new Scan(row.scan().number(), row.scan().nanos(), List.copyOf(readings)), row.marks());
        }).toList();
    }

    /** The same row with a channel's code moved by so much. */
    static Row moved(Row row, Channel channel, long by) {
        List<Reading> readings = new ArrayList<>(row.scan().readings());
        if (readings.get(channel.index()) instanceof Reading.Valid valid) {
            readings.set(channel.index(), Reading.of(channel, valid.code() + by, valid.takenNanos()));
        }
        return new Row(new Scan(row.scan().number(), row.scan().nanos(), List.copyOf(readings)), row.marks());
    }

    /** The same row at another time. */
    static Row at(Row row, long nanos) {
        return new Row(new Scan(row.scan().number(), nanos, row.scan().readings()), row.marks());
    }

    static Gathered gathered(Rig rig, List<Row> rows) {
        Trace trace = new Trace(rig);
        rows.forEach(trace::take);
        return trace.end();
    }

    static List<Finding> findings(Rig rig, List<Row> rows) {
        return Findings.of(rig, gathered(rig, rows), Rating.usual(rig.cells().ratedAmpHours()));
    }
}
