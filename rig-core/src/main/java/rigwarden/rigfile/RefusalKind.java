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
    COMMAND_WRONG(70, "An instrument's command cannot be sent, or lacks its number."),
    TOO_LARGE(71, "The file is larger than any rig or programme needs."),
    UTF_16(72, "The file is UTF-16 text."),
    BYTE_ORDER_MARK(73, "The file begins with a byte-order mark."),
    NUL_BYTES(74, "The file has NUL bytes."),
    TOO_DEEP(75, "Brackets stand in each other too deep."),
    NAME_NO_COLUMN(76, "A name cannot be a column."),
    NAME_WITHOUT_UNIT(77, "A column's name does not end with its unit."),
    NAME_RESERVED(78, "A name is that of a column that Rigwarden has itself."),
    TEXT_UNREADABLE(79, "A text has signs in it that nobody can see."),
    SAME_PORT(80, "Two instruments have the same serial port."),
    PORT_NO_DEVICE(81, "A serial port is no device file."),
    BAUD_SLOW(82, "A serial line is too slow for its poll."),
    CHARGER_STRONG(83, "A plain charger gives more than the cells may get."),
    FINISH_HIGH(84, "A charger's finish is not below its current."),
    FLOAT_HIGH(85, "A charger's float is not below its charge voltage."),
    SOURCE_LOW(86, "A source can never fill the cells."),
    SINK_LOW(87, "A sink cannot bear full cells."),
    WATTS_BEYOND(88, "A heater's power cannot be drawn at the lowest voltage."),
    INVERTER_STRONG(89, "An inverter takes more than the path may carry."),
    QUIT_LATE(90, "An inverter goes on where the warden has tripped.", Weight.NAMED),
    QUIT_EARLY(91, "An inverter quits with the cells half full."),
    FARADS_FORGOTTEN(92, "The capacitors of an inverter are not counted."),
    HEATER_UNGUARDED(93, "A heater's own cut-out is not in the loop."),
    STOPS_WITHOUT_CONTACTOR(94, "A source or sink can be stopped without a contactor only."),
    RELAY_UNRATED(95, "A relay that shall stop a source or sink is not described."),
    BLEED_HOT(96, "The bleed resistor is too small for its heat."),
    PRECHARGE_HOT(97, "The pre-charge resistor is too small for one filling of the bus."),
    PRECHARGE_PEAK(98, "The pre-charge begins with too much current."),
    HOLD_AND_SCAN(99, "The heartbeat stage tolerates no missed beat."),
    CONTACT_SLOW(100, "The contactor opens slowly.", Weight.NAMED),
    PROTECTION_SLOW(101, "The battery's protection is slow.", Weight.UNATTENDED),
    PROBE_LAGS(102, "A probe follows its place too slowly.", Weight.UNATTENDED),
    PROBE_POOR(103, "A probe is too uncertain to tell a bad joint.", Weight.UNATTENDED),
    NO_SUCH_BAR(104, "A probe sits on a bar that is not there."),
    PLACE_TWICE(105, "Two probes sit on the same place."),
    DIVIDER_COARSE(106, "A divider makes the steps of a tap too coarse."),
    CALIBRATION_TOO_GOOD(107, "A calibration claims more than the chip can give."),
    ISLANDS_JOINED(108, "Two islands share a bus, which joins their grounds."),
    ISLAND_ON_GROUND(109, "An upper island sits on the bus of the measurement ground."),
    SHUNT_MISMATCH(110, "The shunt's resistance and its rating do not belong together."),
    BRANCH_UNFUSED(111, "A thinner cable of one device has no fuse of its own."),
    CELL_OHMS_ODD(112, "The cell's resistance does not fit its size."),
    LOOP_TWICE(113, "A contact stands in the loop twice."),
    ROOM_LATER(114, "The room of a rehearsal drifts out of what cells bear."),
    DISCHARGE_OF_EMPTY(115, "Cells are discharged that are empty."),
    CHARGE_OF_FULL(116, "Cells are charged that are full."),
    PARK_FROM_UNKNOWN(117, "Cells are parked that were never empty."),
    NO_REST(118, "A way is turned round without a rest.", Weight.NAMED),
    CEILING_LOW(119, "A charge ends before the cells are full.", Weight.NAMED),
    TAPER_HIGH(120, "A taper is too high to call cells full.", Weight.NAMED),
    TAPER_UNDER_FINISH(121, "A charger ends before the taper is reached."),
    PROTECTION_INSIDE(122, "The battery's protection may open inside the programme.", Weight.NAMED),
    EMPTY_AND_PARKED(123, "Cells shall be left empty and parked."),
    TOO_MANY_STEPS(124, "The programme has too many steps."),
    TOO_LONG(125, "The programme takes too long."),
    CELL_LABELS(126, "The labels do not name each cell once."),
    EMPTIED_AFTER_RECOVERY(131, "Cells that were recovered are emptied in the same programme."),
    CURRENT_FAINT(132, "A step's current is too small to be watched."),
    TRIP_INSIDE_PROGRAMME(133, "A trip was moved inward to where the programme works."),
    TWO_SPEECHES(140, "An instrument has both commands and a register map."),
    REGISTER_MISFIT(141, "A register's type does not fit the function that reads or writes it."),
    REGISTER_BEYOND(142, "A register ends beyond the last address."),
    REGISTER_TWICE(143, "Two numbers are written to the same register."),
    REGISTER_NARROW(144, "A register cannot hold a number that it must hold."),
    REGISTER_COARSE(145, "A register's steps are too coarse for what is set by it."),
    LINK_TIME_SHORT(146, "An instrument would switch off between two polls, or long after the link died."),
    STATION_BAUD(147, "A serial line is too slow for the registers of a poll."),
    PART_DIES(151, "The pack's highest voltage is above what a chip is made for."),
    PROBE_BARE(152, "A probe on live metal is not insulated for the pack's voltage."),
    SELECT_MIXED(153, "A select has a chip of its own and chips on select lines beside it."),
    SELECT_TWICE(154, "A select is used on two SPI buses."),
    MODES_MIXED(155, "Chips of different SPI modes hang on one select."),
    LINE_OFF_HEADER(156, "A select or ready line is not on the controller's own header."),
    PIN_DRIVES_ONLY(157, "An input is on a pin that can only drive."),
    PROBE_HASTY(158, "A probe is read before its converter is done."),
    REFERENCE_HIGH(159, "An ADC's reference is above its supply."),
    NO_PROOF_OF_LIFE(160, "A chip has nothing by which it proves that it still converts.", Weight.UNATTENDED),
    NO_SECOND_SUM(161, "The shunt's chip has no charge accumulator.", Weight.NAMED),
    CALIBRATION_ALTERED(171, "A calibration is not as it was written."),
    CALIBRATION_STRANGE(172, "A calibration is of another rig or another chip."),
    CALIBRATION_TWICE(173, "A channel has two calibrations."),
    CALIBRATION_EXPIRED(174, "A calibration has expired, or is not of yet."),
    LOOSE_TWICE(181, "There is more than one loose probe.");

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
