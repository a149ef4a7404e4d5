package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;

/** The columns of a run's export, in order: time and step, every channel, the running sums. */
final class CsvColumns {
    private CsvColumns() {}

    /** Channels that get a column. The sensor's count and the disk's room are in the run file; {@code charge_ah} stands for the first. */
    static List<Channel> channels(List<Channel> all) {
        return all.stream().filter(c -> c.role() != Role.ACCUMULATED && c.role() != Role.FREE_SPACE).toList();
    }

    /** All columns of a run with these channels. */
    static List<Column> of(List<Channel> all) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.own("elapsed_s", "s", Column.Type.NOT_NEGATIVE, true, "Time since the run began, by a clock that is never set."));
        columns.add(Column.own("step", "1", Column.Type.COUNT, true,
                "Number of the programme's step that began last, from 1; 0 before the first. What each step is stands in the run file."));
        channels(all).forEach(channel -> columns.add(Column.own(channel.name(), ucum(channel.quantity()), Column.Type.NUMBER, false,
                words(channel) + sure(channel) + " Empty where there was no valid reading.")));
        columns.add(Column.own("charge_ah", "A.h", Column.Type.NUMBER, true,
                "Charge since the run began, positive into the cells: the trapezoid of current_a, over the scans in which current and all cells"
                        + " were read. The sensor's own count, which findings rest on, is in the run file."));
        columns.add(Column.own("energy_wh", "W.h", Column.Type.NUMBER, true,
                "Energy since the run began at the cells' studs, positive into the cells: the trapezoid of current times the sum of the cells."));
        return List.copyOf(columns);
    }

    private static String ucum(Quantity quantity) {
        return switch (quantity) {
            case CURRENT -> "A";
            case CHARGE -> "C";
            case VOLTAGE -> "V";
            case TEMPERATURE -> "Cel";
            case TIME -> "s";
            case SIZE -> "By";
            case SWITCH, RATIO -> "1";
        };
    }

    private static String words(Channel channel) {
        int cell = channel.cell();
        return switch (channel.role()) {
            case CURRENT -> "Current through the shunt, positive into the cells.";
            case ACCUMULATED -> "The current sensor's own count of charge, in its own clock's seconds.";
            case CLOCK_RATIO -> "The host's clock over the current sensor's.";
            case PACK_VOLTS -> "Voltage of all cells together, at the current sensor.";
            case TAP_VOLTS -> "Tap above cell " + cell + " over its island's ground.";
            case CELL_VOLTS -> "Voltage of cell " + cell + ", with all that lies between its two taps.";
            case BUS_VOLTS -> "Voltage behind the contactor, on the side of source and sink.";
            case BODY -> "Temperature of the body of cell " + cell + ".";
            case STUD -> "Temperature of a stud of cell " + cell + "; the column's name says which.";
            case BAR -> "Temperature of the bar between cells " + cell + " and " + (cell + 1) + ".";
            case SHUNT_BODY -> "Temperature of the shunt.";
            case CONTACTOR_BODY -> "Temperature of the contactor.";
            case LOOSE -> "Temperature by the loose probe, wherever it lay; the run's events say where.";
            case ROOM -> "Temperature of the room.";
            case LOOP -> "1 where the loop of contacts is closed, else 0.";
            case COIL_FEED -> "1 where the coils' supply is there, else 0.";
            case FEEDBACK -> "1 where the contactor is closed, else 0.";
            case ARM -> "1 where the arm key is turned, else 0.";
            case SOURCE_VOLTS, SINK_VOLTS -> "Voltage by the instrument's own answer.";
            case SOURCE_AMPS, SINK_AMPS -> "Current by the instrument's own answer.";
            case SOURCE_ON, SINK_ON -> "1 where the instrument says that its output is on, else 0.";
            case RECORDER_LAG -> "How far the logbook was behind.";
            case FREE_SPACE -> "Room on the logbook's disk.";
            case LATENESS -> "How late the scan began.";
        };
    }

    private static String sure(Channel channel) {
        if (channel.gainU() == 0 && channel.offsetU() == 0) {
            return "";
        }
        String unit = channel.quantity().symbol();
        String fixed = Spots.say("%.2g", channel.offsetU()) + (unit.isEmpty() ? "" : " " + unit);
        return Spots.say(" Expanded uncertainty (k = 2), combined by squares: %s and %.2g %% of the reading.", fixed, 100 * channel.gainU());
    }
}
