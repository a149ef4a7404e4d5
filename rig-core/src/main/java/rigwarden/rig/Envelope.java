package rigwarden.rig;

/**
 * The limits that no file may widen, in one place. They are common practice for LFP and this project's choice, not a
 * maker's data: the cell maker's sheet governs where it is tighter. Volts are per cell and hold for the true value.
 */
public final class Envelope {
    /** Highest voltage a programme may set, uncertainty included: the charge voltage that cell makers print. */
    public static final double CEILING_V = 3.65;
    /** Charge voltage when the programme names none: the last 0.05 V adds under 1 % and much stress. */
    public static final double CEILING_DEFAULT_V = 3.60;
    /** Highest true cell voltage: beyond it the electrolyte suffers. */
    public static final double HIGH_TRIP_V = 3.70;
    /** Lowest cut-off a programme may set. */
    public static final double CUT_OFF_V = 2.50;
    /** Lowest true voltage in discharge and rest. */
    public static final double LOW_TRIP_V = 2.40;
    /** Lowest true voltage while charging: below it copper may have dissolved. */
    public static final double LOW_CHARGING_TRIP_V = 2.00;
    /** Below it a cell is charged by the step that recovers cells only. */
    public static final double LOW_CHARGING_V = 2.45;
    /** Highest rate of that step, and of the approach to a protection's edge, 1/h. */
    public static final double RECOVER_C = 0.05;
    /** Where the approach to a protection's edge ends, V: the step alone may go there. */
    public static final double PROVE_HIGH_V = 3.69;
    public static final double PROVE_LOW_V = 2.42;
    /** A cell tap must be able to show this after divider and supply, so that an overcharge is seen as one. */
    public static final double REPRESENTABLE_V = 4.0;
    /** A tap with a larger expanded uncertainty is refused unattended. */
    public static final double TAP_U_REFUSED_V = 0.010;
    /** A tap with a larger expanded uncertainty is named. */
    public static final double TAP_U_NAMED_V = 0.005;
    public static final double CHARGE_C = 0.5;
    public static final double DISCHARGE_C = 1.0;
    public static final double CHARGING_LOW_TRIP_C = 2;
    public static final double CHARGING_HIGH_TRIP_C = 45;
    /** A reading above it ends the charging until the cells may be entered again: by then the trip is near. */
    public static final double CHARGING_RUN_HIGH_C = 40;
    public static final double CHARGING_ENTRY_LOW_C = 10;
    public static final double CHARGING_ENTRY_HIGH_C = 38;
    public static final double DISCHARGING_LOW_TRIP_C = -10;
    public static final double DISCHARGING_HIGH_TRIP_C = 55;
    public static final double DISCHARGING_ENTRY_LOW_C = 5;
    public static final double DISCHARGING_ENTRY_HIGH_C = 40;
    /** Lithium plates on a cold anode: no charge below this. */
    public static final double NO_CHARGE_BELOW_C = 5;
    public static final double TENTH_BELOW_C = 10;
    public static final double FIFTH_BELOW_C = 15;
    /** Terminal, lug, shunt, contactor: a joint this warm is a bad joint. */
    public static final double TERMINAL_TRIP_C = 60;
    public static final double TERMINAL_OVER_ROOM_K = 35;
    public static final double TERMINAL_OVER_CELL_K = 20;
    /** Rise of a terminal in the first five minutes of a step, K/min. */
    public static final double TERMINAL_EARLY_K_PER_MIN = 15;
    /** Rise of a terminal later in a step, K/min over two minutes. */
    public static final double TERMINAL_LATE_K_PER_MIN = 2;
    /** Over the median of its likes, K, for a minute. */
    public static final double TERMINAL_OVER_LIKES_K = 5;
    /** The lag of the recorder that trips, s: a card may stall for seconds, and that alone loses nothing. */
    public static final double RECORDER_LAG_TRIP_S = 10;
    public static final double RECORDER_LAG_WARN_S = 3;
    /** A shunt runs at no more than this part of its nominal current (its resistance moves with its heat). */
    public static final double SHUNT_CONTINUOUS = 2.0 / 3.0;
    /** A fuse carries no more than this part of its rating for hours. */
    public static final double FUSE_CONTINUOUS = 0.8;
    /** Wire time may fill this part of a scan period. */
    public static final double WIRE_TIME_SHARE = 0.6;
    /** Current that counts as none, A, beyond the channel's own uncertainty. */
    public static final double NO_CURRENT_A = 1.0;
    /** The least current that may be ordered, A: what is less could stop without being missed. */
    public static final double LEAST_ORDERED_A = 2.0;
    /** A charge after a measured discharge ends at this multiple of it. */
    public static final double PUT_IN_FINDING = 1.02;
    public static final double PUT_IN_TRIP = 1.05;
    /** A taper that lasts longer ends the step. */
    public static final double TAPER_HOURS = 3;

    private Envelope() {}

    /**
     * Share of the rated capacity per hour that may be charged at a cell temperature.
     *
     * @param celsius coldest true cell temperature, uncertainty subtracted
     * @return C-rate, 0 when charging is not allowed
     */
    public static double chargeCeilingC(double celsius) {
        if (celsius < NO_CHARGE_BELOW_C) {
            return 0;
        }
        if (celsius < TENTH_BELOW_C) {
            return 0.1;
        }
        return celsius < FIFTH_BELOW_C ? 0.2 : CHARGE_C;
    }
}
