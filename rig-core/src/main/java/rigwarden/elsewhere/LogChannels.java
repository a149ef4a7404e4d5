package rigwarden.elsewhere;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channel;
import rigwarden.rig.Channels;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Role;

/** The channels that a map makes, in one fixed order: current, count, voltages, temperatures. */
public final class LogChannels {
    /** Expanded (k = 2) from limits of a rectangular distribution: 2 / √3. */
    private static final double FROM_LIMITS = 2 / Math.sqrt(3);
    /** Codes are finer than what any instrument shows, so that nothing of a number is lost: A and V. */
    private static final double FINE = 1e-9;
    private static final double FINE_KELVIN = 1e-6;
    private static final double FINE_COULOMBS = 1e-7;

    private LogChannels() {}

    /**
     * The log as the findings see it.
     *
     * @param usualNanos usual time between two rows while current flows
     */
    public static ForeignLog of(LogMap map, long usualNanos) {
        List<Channel> made = new ArrayList<>();
        List<Double> steps = new ArrayList<>();
        LogMap.Current current = map.current();
        made.add(channel(0, Calibratable.CURRENT, Role.CURRENT, 0, usualNanos, FINE, current.gainLimits(), current.offsetLimits(), current.column()));
        steps.add(current.step());
        map.counted().ifPresent(counted -> {
            made.add(new Channel(1, "charge_as", Role.ACCUMULATED, 0, usualNanos, FINE_COULOMBS, 0, FROM_LIMITS * current.gainLimits(), 0,
                    -counted.out().most(), counted.in().most(), 0));
            steps.add(counted.step());
        });
        for (LogMap.Measured one : map.columns()) {
            double fine = one.place() == Place.CELL ? FINE : FINE_KELVIN;
            made.add(channel(made.size(), nameOf(one), one.place().role(), one.cell(), usualNanos, fine, one.gainLimits(), one.offsetLimits(),
                    one.column()));
            steps.add(one.step());
        }
        return new ForeignLog(map.name(), usualNanos, map.cells(), made, current.gainLimits(), current.offsetLimits(), steps);
    }

    private static Channel channel(int index, String name, Role role, int cell, long usualNanos, double scale, double gain, double offset,
            LogMap.Column column) {
        return new Channel(index, name, role, cell, usualNanos, scale, 0, FROM_LIMITS * gain, FROM_LIMITS * offset, column.least(),
                column.most(), 0);
    }

    /** Our name of a column. */
    static String nameOf(LogMap.Measured one) {
        return switch (one.place()) {
            case CELL -> Channels.cellName(one.cell());
            case ROOM -> "room_c";
            case BODY, STUD, BAR -> String.format(Locale.ROOT, "%s_%02d_c", one.place().word(), one.cell());
        };
    }
}
