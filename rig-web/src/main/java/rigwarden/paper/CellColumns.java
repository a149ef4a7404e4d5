package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;

/**
 * The columns of a cell's file in the Battery Data Format of the LF Energy Battery Data Alliance, ontology version 1.3.0: labels, units
 * and meaning are its own to the letter. Positive current charges the cell, as everywhere here.
 */
final class CellColumns {
    /** Every column's address begins so. */
    static final String BASE = "https://w3id.org/battery-data-alliance/ontology/battery-data-format#";

    private static final String ROWS = " By the trapezoid of this file's own rows; the sensor's own count and its uncertainty are in the run's findings.";

    private CellColumns() {}

    /**
     * All that a file has.
     *
     * @param zoned whether it is known in which zone the rig's clock ran
     * @param body whether the cell has a probe on its body
     */
    static List<Column> of(boolean zoned, boolean body) {
        List<Column> all = new ArrayList<>();
        all.add(column("test_time_second", "Test Time / s", "s", Column.Type.NOT_NEGATIVE, true,
                "Time since the run began, by a clock that is never set."));
        if (zoned) {
            all.add(column("unix_time_second", "Unix Time / s", "s", Column.Type.NOT_NEGATIVE, true,
                    "Test time after the second at which the computer's own clock said that the run began."));
        }
        all.add(column("voltage_volt", "Voltage / V", "V", Column.Type.NUMBER, true,
                "Of this cell, with all that lies between its two taps. A scan in which it or the current was not read has no row."));
        all.add(column("current_ampere", "Current / A", "A", Column.Type.NUMBER, true, "Positive into the cell."));
        all.add(column("cycle_count", "Cycle Count / 1", "1", Column.Type.COUNT, true, "From 0, one more where a charge begins after a discharge."));
        all.add(column("step_count", "Step Count / 1", "1", Column.Type.COUNT, true, "Steps begun so far in this run."));
        all.add(column("step_id", "Step ID", "", Column.Type.WORDS, false, "Number of the programme's step, from 1; empty between steps."));
        all.add(column("step_type", "Step Type", "", Column.Type.WORDS, false, "Kind of the programme's step in Rigwarden's own words; empty between steps."));
        if (body) {
            all.add(column("surface_temperature_celsius", "Surface Temperature / degC", "Cel", Column.Type.NUMBER, false,
                    "Of the cell's body; empty where not read."));
        }
        all.add(column("ambient_temperature_celsius", "Ambient Temperature / degC", "Cel", Column.Type.NUMBER, false,
                "Of the room; empty where not read."));
        all.add(column("power_watt", "Power / W", "W", Column.Type.NUMBER, true, "Voltage times current: negative in discharge."));
        all.add(sum("charging_capacity_ah", "Charging Capacity / Ah", "A.h", Column.Type.NOT_NEGATIVE, "Charge put in since the run began; never resets."));
        all.add(sum("discharging_capacity_ah", "Discharging Capacity / Ah", "A.h", Column.Type.NOT_NEGATIVE,
                "Charge taken out since the run began; never resets."));
        all.add(sum("net_capacity_ah", "Net Capacity / Ah", "A.h", Column.Type.NUMBER, "Put in less taken out."));
        all.add(sum("charging_energy_wh", "Charging Energy / Wh", "W.h", Column.Type.NUMBER, "Power over the time with positive current."));
        all.add(sum("discharging_energy_wh", "Discharging Energy / Wh", "W.h", Column.Type.NUMBER,
                "Power over the time with negative current, as a positive figure."));
        all.add(sum("net_energy_wh", "Net Energy / Wh", "W.h", Column.Type.NUMBER, "Put in less taken out."));
        return List.copyOf(all);
    }

    private static Column sum(String name, String label, String ucum, Column.Type type, String description) {
        return column(name, label, ucum, type, true, description + ROWS);
    }

    private static Column column(String name, String label, String ucum, Column.Type type, boolean required, String description) {
        return new Column(name, label, ucum, type, required, description, BASE + name);
    }
}
