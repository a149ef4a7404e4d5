package rigwarden.run;

import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Progress.Carried;
import rigwarden.run.Progress.Window;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;
import rigwarden.warden.Scans;

/** One scan told to the last bit, and a step so far that leads to it. */
final class Seen {
    static final long SECOND = 1_000_000_000L;
    static final long NOW = 1_000_000 * SECOND;

    final Rig rig;
    private final Reading[] readings;
    /** Of the step so far. */
    long since = NOW - 100 * SECOND;
    long control = NOW;
    long ceiling = Long.MAX_VALUE;
    long flowed = NOW;
    double amps = 10;
    double low = 3.3;
    double top = 3.3;
    double ampHours;
    double measured;

    Seen(Rig rig) {
        this.rig = rig;
        Scans scans = new Scans(rig, NOW);
        readings = rig.channels().stream().map(scans::reading).toArray(Reading[]::new);
    }

    Seen set(Channel channel, double value) {
        readings[channel.index()] = new Reading.Valid(0, value, NOW);
        return this;
    }

    Seen set(Role role, double value) {
        rig.channels(role).forEach(channel -> set(channel, value));
        return this;
    }

    Seen set(String column, double value) {
        return set(rig.column(column).orElseThrow(), value);
    }

    /** Every cell at this voltage, now and in the means of the last second; pack and bus as high as their sum. */
    Seen cells(double volts) {
        low = volts;
        top = volts;
        double sum = volts * rig.cells().series();
        return set(Role.CELL_VOLTS, volts).set(Role.PACK_VOLTS, sum).set(Role.BUS_VOLTS, sum);
    }

    Seen failed(Role role) {
        rig.channels(role).forEach(channel -> readings[channel.index()] = new Reading.Failed(Failure.NO_ANSWER, NOW));
        return this;
    }

    Seen failed(String column) {
        readings[rig.column(column).orElseThrow().index()] = new Reading.Failed(Failure.NO_ANSWER, NOW);
        return this;
    }

    Scan scan() {
        return new Scan(1, NOW, List.of(readings));
    }

    Progress progress() {
        long charge = Math.round(ampHours * 3600e9);
        Account account = new Account(0, Math.max(charge, 0), Math.max(-charge, 0), 0, 0, 0);
        double[] zero = new double[rig.channels(Role.BODY).size()];
        return new Progress(0, since, account, new Progress.Point(NOW - SECOND, 0, 0, 0), amps, control, ceiling, flowed,
                new Window(NOW, 0, 0, low), new Window(NOW, 0, 0, top), Still.EMPTY, 0, 0, Carried.fresh(zero).measured(measured));
    }
}
