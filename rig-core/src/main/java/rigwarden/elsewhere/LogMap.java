package rigwarden.elsewhere;

import java.util.List;
import java.util.Optional;
import rigwarden.rig.Cells;

/**
 * What a plain CSV's columns mean, and what is stated of the instruments that wrote it. Read from its file by {@link MapFile}.
 *
 * @param name a person's name for this kind of log
 * @param source where the data come from, and under which licence; empty where nobody says
 * @param cells what was under test
 * @param layout how the file is written
 * @param time its clock
 * @param current its current
 * @param columns the measured columns besides the current, in the order of the channels: voltages by cell, then temperatures
 * @param counted the instrument's own count of the charge
 * @param stretches how the file's steps are told apart, and what they are
 */
public record LogMap(String name, String source, Cells cells, Layout layout, Column time, Current current, List<Measured> columns,
        Optional<Counted> counted, Stretches stretches) {
    public LogMap {
        columns = List.copyOf(columns);
    }

    /**
     * How the file is written.
     *
     * @param separator between two fields
     * @param decimalComma whether numbers have a comma instead of a point
     * @param linesBefore lines before the one with the columns' names
     */
    public record Layout(char separator, boolean decimalComma, int linesBefore) {}

    /**
     * A column: value = zero + unit × number.
     *
     * @param name in the file's heading
     * @param unit worth of 1, in our unit: s, A, V, °C or A·s
     * @param zero worth of 0
     * @param least less is an overflow
     * @param most more is an overflow
     */
    public record Column(String name, double unit, double zero, double least, double most) {}

    /**
     * The current.
     *
     * @param column positive into the cells, whatever the file's own sign
     * @param gainLimits what it may be off by, and the count with it, limits ±, relative
     * @param offsetLimits the same, independent of the current, limits ±, A
     * @param step smallest change that it shows, A
     */
    public record Current(Column column, double gainLimits, double offsetLimits, double step) {}

    /**
     * A voltage or a temperature.
     *
     * @param column in V or °C
     * @param place what it is of
     * @param cell number of the cell, from 1; 0 for the room
     * @param gainLimits what it may be off by, limits ±, relative
     * @param offsetLimits the same, independent of its height, limits ±, V or K
     * @param step smallest change that it shows, V or K; 0 where nobody asked
     */
    public record Measured(Column column, Place place, int cell, double gainLimits, double offsetLimits, double step) {}

    /**
     * The instrument's own count.
     *
     * @param in what went into the cells, A·s; it never falls
     * @param out what came out, A·s, positive; it never falls
     * @param step smallest change that both show, A·s
     */
    public record Counted(Column in, Column out, double step) {}
}
