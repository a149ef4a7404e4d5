package rigwarden.rigfile;

/** Every kind of refusal, with its number and sentence. Numbers are never reused. */
public enum RefusalKind {
    NOT_READABLE(1, "The file is missing or may not be read."),
    NOT_UTF8(2, "The file is not UTF-8 text."),
    NOT_TOML(3, "The file is not TOML."),
    TWICE(4, "A key or table stands twice in the file."),
    UNKNOWN_KEY(5, "A key is not known here."),
    MISSING_KEY(6, "A key that has no default is missing."),
    WRONG_TYPE(7, "A value has the wrong type."),
    OUT_OF_RANGE(8, "A value is outside its range."),
    UNIT_MISTAKE(9, "A value is outside its range by a factor of a thousand: a wrong unit."),
    UNKNOWN_WORD(10, "A word is not one of those that are known here."),
    SAME_NAME(11, "Two things have the same name."),
    SAME_ADDRESS(12, "Two chips have the same address on one bus."),
    SAME_LINE(13, "Two uses have the same GPIO line."),
    UNKNOWN_BUS(14, "A chip sits on a bus that the file does not list."),
    BUS_TOO_FAST(15, "A bus is faster than the slowest chip on it allows."),
    ADDRESS_NOT_OF_CHIP(16, "A chip cannot have this address."),
    SUPPLY_MISSING(17, "The supply voltage of an ADC is not stated."),
    SUPPLY_TOO_LOW(18, "An ADC cannot show an overcharged cell: supply or divider is too low."),
    TAP_POOR(19, "A tap is too uncertain for a rig that nobody watches.", Weight.UNATTENDED),
    TAP_NAMED(20, "A tap is uncertain enough to make the envelope noticeably smaller.", Weight.NAMED),
    NO_TAP(21, "A cell has no tap, or the bus none."),
    NO_BODY_PROBE(22, "A cell has no probe on its body."),
    NO_STUD_PAIR(23, "A cell has no pair of stud probes."),
    NO_ROOM_PROBE(24, "There is not exactly one probe for the room, or none on shunt or contactor."),
    NO_CONTACTOR(25, "There is no contactor in the current path."),
    NO_FUSE_OR_SHUNT(26, "There is no fuse or no shunt in the current path."),
    RATING_MISSING(27, "A part of the current path has no rating."),
    SCALE_TOO_SHORT(28, "The shunt's full scale does not reach a current that must be seen."),
    SCALE_BEYOND_CHIP(29, "The shunt's voltage at full scale is beyond the chip's input."),
    FUSE_OVER_CABLE(30, "The fuse does not protect a conductor behind it."),
    FUSE_CANNOT_BREAK(31, "The fuse cannot interrupt the short-circuit current of the cells."),
    CONTACTOR_CANNOT_BREAK(32, "The contactor cannot interrupt this current at this voltage in both directions."),
    ONE_STOP(33, "A way can be stopped by one element only.", Weight.UNATTENDED),
    SAME_STOP(34, "The two stops of a way share one element."),
    NO_PRECHARGE(35, "There is no pre-charge."),
    PRECHARGE_SLOW(36, "The pre-charge does not bring the bus within 5 % of the pack in 5 s."),
    DECAY_SHORT(37, "The bus cannot be empty when its decay time is over."),
    LOOP_NOT_LATCHING(38, "The loop closes again by itself."),
    LOOP_CONTACT_MISSING(39, "Emergency stop or thermal cut-out is not in the loop."),
    NO_WINDOW(40, "There is neither a hardware window nor limits that are read back.", Weight.UNATTENDED),
    HEARTBEAT_HOLD(41, "The heartbeat stage holds for too short or too long."),
    SOURCE_LIMIT_HIGH(42, "The source's own limit is above what the cells may get."),
    SINK_QUITS_EARLY(43, "The sink gives up before the cells are empty."),
    WIRE_TIME(44, "Reading a bus takes too much of a scan."),
    PROBE_SLOW(45, "A probe is read too seldom."),
    TAP_IN_PACK(46, "A cell of a pack is measured alone instead of by taps."),
    ISLAND_GAP(47, "The cells of an island do not follow each other."),
    PART_OF_NOTHING(48, "A relay or another part belongs to no source or sink."),
    PROTECTION_LATE(49, "The battery's own protection opens too late to be the last layer.", Weight.UNATTENDED),
    RESTART_LOW(50, "An inverter would start again below the voltage at which it quits."),
    CEILING_HIGH(51, "A step's ceiling plus the tap's uncertainty is above what a programme may use."),
    CUT_OFF_LOW(52, "A step's cut-off is below what a programme may use."),
    OVER_WEAKEST(53, "A step's current is above what the governing part may carry."),
    CHARGE_FAST(54, "A step charges faster than the envelope allows."),
    TAPER_NOT_BELOW(55, "A step's taper is not below its charge current."),
    REST_SHORT(56, "A rest is too short to settle, or ends before it may."),
    PARK_SHARE(57, "Cells would be parked too empty or too full."),
    NOT_PARKED(58, "The programme does not end with park."),
    NO_STEPS(59, "The programme has no steps."),
    TWO_RATES(60, "A current is not given in exactly one way."),
    WHICH_DEVICE(61, "A step does not say which source or sink works."),
    NO_SET_POINT(62, "A step orders a current from a device that takes no orders."),
    HEAT_RUN_LONG(63, "A heat run has no end in time."),
    ATTENDED_STEP(64, "A step that needs a person stands in a programme that nobody watches."),
    NOT_GENTLE(65, "A step near the edge of a cell has too much current."),
    NEEDS_SET_POINT(66, "A step that tells its current is given to a device that takes none."),
    PULSE_FLAT(67, "A pulse is not higher than the current before it."),
    PROOF_BLIND(68, "The taps are too uncertain to approach a protection's edge."),
    REPEAT_DEEP(69, "Repeats stand in each other too deep."),
    COMMAND_WRONG(70, "An instrument's command cannot be sent, or lacks its number.");

    /** What a kind does to a file. */
    public enum Weight {
        /** The file is refused. */
        REFUSED,
        /** The rig is refused to a programme that runs unattended. */
        UNATTENDED,
        /** Said, nothing more. */
        NAMED
    }

    private final int place;
    private final String sentence;
    private final Weight weight;

    RefusalKind(int place, String sentence) {
        this(place, sentence, Weight.REFUSED);
    }

    RefusalKind(int place, String sentence, Weight weight) {
        this.place = place;
        this.sentence = sentence;
        this.weight = weight;
    }

    /** Number as printed, for example {@code R08}. */
    public String number() {
        return (place < 10 ? "R0" : "R") + place;
    }

    public String sentence() {
        return sentence;
    }

    public Weight weight() {
        return weight;
    }
}
