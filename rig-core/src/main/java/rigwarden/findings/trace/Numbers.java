package rigwarden.findings.trace;

import java.util.Arrays;
import java.util.List;
import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** One scan as plain numbers, filled anew by each; NaN where a channel has no valid reading. */
public final class Numbers {
    private final int current;
    private final int accumulated;
    private final double chargeScale;
    private double sum;
    private double sumAmps = Double.NaN;
    private long sumNanos;
    private final int bus;
    private final int[] cellIndex;
    private final int[] warmIndex;
    private final int looseIndex;
    private final int feedback;
    private final List<Channel> cells;
    private final List<Channel> warm;

    public long scan;
    public long nanos;
    public double amps = Double.NaN;
    /** Of the chip's accumulator, A·s of the chip's own clock, positive into the cells; where there is none, of the rows themselves. */
    public double coulombs = Double.NaN;
    public double busVolts = Double.NaN;
    /** Of the loose probe, °C; NaN where a rig has none. */
    public double loose = Double.NaN;
    /** Whether the contactor was seen open; false where nobody sees it. */
    public boolean opened;
    public final double[] volts;
    public final double[] celsius;

    public Numbers(Traced rig) {
        current = rig.channel(Role.CURRENT).index();
        accumulated = rig.possible(Role.ACCUMULATED).map(Channel::index).orElse(-1);
        chargeScale = rig.possible(Role.ACCUMULATED).map(Channel::scale).orElse(0.0);
        bus = rig.channels(Role.BUS_VOLTS).stream().mapToInt(Channel::index).findFirst().orElse(-1);
        cells = rig.channels(Role.CELL_VOLTS);
        warm = rig.channels().stream().filter(c -> c.quantity() == Quantity.TEMPERATURE && !c.role().carried()).toList();
        looseIndex = rig.possible(Role.LOOSE).map(Channel::index).orElse(-1);
        feedback = rig.possible(Role.FEEDBACK).map(Channel::index).orElse(-1);
        cellIndex = cells.stream().mapToInt(Channel::index).toArray();
        warmIndex = warm.stream().mapToInt(Channel::index).toArray();
        volts = new double[cellIndex.length];
        celsius = new double[warmIndex.length];
        Arrays.fill(volts, Double.NaN);
        Arrays.fill(celsius, Double.NaN);
    }

    public void read(Scan from) {
        scan = from.number();
        nanos = from.nanos();
        List<Reading> readings = from.readings();
        amps = value(readings, current);
        coulombs = accumulated < 0 ? summed()
                : readings.get(accumulated) instanceof Reading.Valid valid ? valid.code() * chargeScale : Double.NaN;
        busVolts = bus < 0 ? Double.NaN : value(readings, bus);
        opened = feedback >= 0 && value(readings, feedback) == 0;
        loose = looseIndex < 0 ? Double.NaN : value(readings, looseIndex);
        for (int i = 0; i < volts.length; i++) {
            if (readings.get(cellIndex[i]) instanceof Reading.Valid valid) {
                volts[i] = valid.value();
            } else {
                volts[i] = Double.NaN;
            }
        }
        for (int i = 0; i < celsius.length; i++) {
            celsius[i] = value(readings, warmIndex[i]);
        }
    }

    /** The trapezoid of the currents until now; NaN in a row that has none. */
    private double summed() {
        if (Double.isNaN(amps)) {
            return Double.NaN;
        }
        if (!Double.isNaN(sumAmps)) {
            sum += Math.max(0, nanos - sumNanos) * 1e-9 * (amps + sumAmps) / 2;
        }
        sumAmps = amps;
        sumNanos = nanos;
        return sum;
    }

    /** Whether the charge is the sum of the rows, since nothing counted it. */
    public boolean sums() {
        return accumulated < 0;
    }

    private static double value(List<Reading> readings, int index) {
        return readings.get(index) instanceof Reading.Valid valid ? valid.value() : Double.NaN;
    }

    /** Cells' voltages, in the order of {@link #volts}. */
    public List<Channel> cells() {
        return cells;
    }

    /** Temperatures, in the order of {@link #celsius}. */
    public List<Channel> warm() {
        return warm;
    }
}
