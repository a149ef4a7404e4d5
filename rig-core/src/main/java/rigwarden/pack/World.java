package rigwarden.pack;

/**
 * The truth under an emulated rig: cells, power path, warmth, coils and instruments, run by a virtual clock.
 *
 * <p>Current is positive into the cells. Orders and faults act at the present instant; {@link #advanceTo} then lives
 * through time in steps of at most 100 ms that end exactly where a contact moves, the heartbeat stage drops or an
 * instrument's current arrives. Within a step the current is constant, except that the bus behind an open contactor
 * follows its exponential. A {@link #copy()} runs on to the same bits. Not safe for use by several threads.
 *
 * <p>Longer than most files here: it is the one face of the pack, and most of it is the list of what can be asked.
 */
public final class World {
    private static final long STEP_NANOS = 100_000_000;
    private static final double NANOS = 1e9;
    /** Several devices may answer each other at one instant; what is left over then waits for the next step. */
    private static final int REACTIONS = 8;
    private static final double HOUR_NANOS = 3600 * NANOS;

    private final WorldParameters p;
    private final Cell[] cells;
    private final double[] cellVolts;
    private final Taps taps;
    private final Warmth warmth;
    private final Beads beads;
    private final Contacts contacts;
    private final HeartbeatStage heartbeat;
    private final Devices devices;
    private final Path path;
    private final Account account;
    private final ProtectionSwitch protection;
    private final Fuse fuse;
    private Oracle oracle;

    private long nanos;
    private long eventNanos = Long.MAX_VALUE;
    private boolean loopClosed = true;
    private boolean armed;
    private double roomOffset;
    private double emfVolts;
    private double senseOhms;
    private double outerOhms;

    /**
     * A world at rest at instant 0: everything open, off and at the room's temperature.
     *
     * @param p what it is made of
     * @param startCharge per cell, 0 empty to 1 full
     * @throws IllegalArgumentException if the charges are not one per cell
     */
    public World(WorldParameters p, double[] startCharge) {
        if (startCharge.length != p.cells().size()) {
            throw new IllegalArgumentException(p.cells().size() + " cells need as many charges, not "
                    + startCharge.length);
        }
        this.p = p;
        cells = new Cell[startCharge.length];
        for (int k = 0; k < cells.length; k++) {
            cells[k] = new Cell(p.cells().get(k), startCharge[k], p.room().celsius());
        }
        cellVolts = new double[cells.length];
        taps = new Taps(cells.length);
        warmth = new Warmth(p);
        beads = new Beads(p.beads(), warmth, p.room().celsius());
        contacts = new Contacts(p.coils(), p.path().supplies().size(), p.path().loads().size());
        heartbeat = new HeartbeatStage(p.coils());
        devices = new Devices(p.path());
        path = new Path(p.path());
        account = new Account();
        protection = new ProtectionSwitch(p.protection(), cells.length);
        fuse = new Fuse(p.path().fuseAmps());
        oracle = new Oracle();
        refresh();
        protection.balance(cellVolts);
        solve();
    }

    private World(World other) {
        p = other.p;
        cells = new Cell[other.cells.length];
        for (int k = 0; k < cells.length; k++) {
            cells[k] = new Cell(other.cells[k]);
        }
        cellVolts = other.cellVolts.clone();
        taps = new Taps(other.taps);
        warmth = new Warmth(other.warmth);
        beads = new Beads(other.beads);
        contacts = new Contacts(other.contacts);
        heartbeat = new HeartbeatStage(other.heartbeat);
        devices = new Devices(other.devices);
        path = new Path(other.path);
        account = new Account(other.account);
        protection = new ProtectionSwitch(other.protection);
        fuse = new Fuse(other.fuse);
        oracle = new Oracle(other.oracle);
        nanos = other.nanos;
        eventNanos = other.eventNanos;
        loopClosed = other.loopClosed;
        armed = other.armed;
        roomOffset = other.roomOffset;
        emfVolts = other.emfVolts;
        senseOhms = other.senseOhms;
        outerOhms = other.outerOhms;
    }

    /** A second world that shares nothing that changes and runs on identically. */
    public World copy() {
        return new World(this);
    }

    /** The present instant, nanoseconds since the start. */
    public long nanos() {
        return nanos;
    }

    /** Lives on until an instant; one that has passed changes nothing. */
    public void advanceTo(long target) {
        while (nanos < target) {
            step(Math.min(Math.min(Math.min(target, nanos + STEP_NANOS), eventNanos), fuse.dueNanos(path.amps(), nanos)));
            if (eventNanos <= nanos) {
                heartbeat.reach(nanos);
                refresh();
            }
        }
    }

    private void step(long latest) {
        double alone = path.secondsAlone(contacts, protection, emfVolts, devices.sinks()) * NANOS;
        long end = alone < latest - nanos ? nanos + 1 + (long) alone : latest;
        double seconds = (end - nanos) / NANOS;
        double room = celsiusOfRoom(nanos + (end - nanos) / 2);
        boolean moving = devices.moving();
        if (moving) {
            devices.move(seconds / 2);
            solve();
        }
        path.step(seconds, emfVolts);
        double amps = path.meanAmps();
        double studVolts = 0;
        for (int k = 0; k < cells.length; k++) {
            cells[k].step(amps - protection.balanceAmps(k), seconds, warmth.celsius(k));
            studVolts += cells[k].meanVolts();
        }
        burn(amps, seconds);
        account.enter(amps * seconds, studVolts, path.meanBusVolts(), celsius(Node.SHUNT));
        warmth.step(amps, seconds, room, cells);
        beads.step(seconds, warmth, celsiusOfRoom(end));
        if (moving) {
            devices.move(seconds / 2);
        }
        long before = nanos;
        nanos = end;
        for (int k = 0; k < cells.length; k++) {
            cells[k].settle(warmth.celsius(k));
        }
        solve();
        observe(before);
        protection.balance(cellVolts);
        if (react()) {
            heartbeat.reach(nanos);
            refresh();
        }
    }

    private void burn(double amps, double seconds) {
        boolean before = fuse.blown();
        fuse.carry(amps, seconds);
        if (fuse.blown() && !before) {
            path.part();
        }
    }

    /** Whether something does something of its own after what it saw of this instant. */
    private boolean react() {
        boolean changed = devices.saw(path, nanos);
        return protection.saw(highest(), lowest(), nanos) || changed;
    }

    /** Takes in what changed at this instant. */
    private void refresh() {
        contacts.feed(coilFeed(), nanos);
        boolean changed = true;
        for (int i = 0; i < REACTIONS && changed; i++) {
            protection.aim(nanos);
            devices.aim(contacts, nanos);
            solve();
            changed = react();
        }
        long due = Math.min(Math.min(contacts.dueNanos(), heartbeat.dueNanos()),
                Math.min(devices.dueNanos(), protection.dueNanos()));
        eventNanos = Math.max(due, nanos + 1);
        observe(nanos);
    }

    private void solve() {
        double emf = 0;
        double ohms = warmth.innerOhms();
        for (int k = 0; k < cells.length; k++) {
            cellVolts[k] = cells[k].emfVolts(warmth.celsius(k)) - protection.balanceAmps(k) * cells[k].ohms();
            emf += cellVolts[k];
            ohms += cells[k].ohms();
        }
        emfVolts = emf;
        senseOhms = ohms;
        PathParameters parts = p.path();
        double outer = warmth.lugOhms() + parts.fuseOhms() + parts.shuntOhms() + parts.contactorOhms()
                + protection.ohms();
        outerOhms = outer;
        double spark = path.solve(contacts, protection, emf, ohms, outer, devices);
        for (int k = 0; k < cells.length; k++) {
            cellVolts[k] += path.amps() * cells[k].ohms();
        }
        if (spark != 0) {
            account.enter(-spark, packVolts(), busVolts(), celsius(Node.SHUNT));
            for (Cell cell : cells) {
                cell.pour(-spark);
            }
        }
    }

    private void observe(long before) {
        double high = highest();
        double low = lowest();
        oracle.cells(high, low);
        int hot = warmth.hottest();
        double celsius = warmth.celsius(hot);
        if (oracle.hotter(celsius)) {
            oracle.hottest(celsius, warmth.node(hot));
        }
        oracle.current(path.amps(), feedback(), nanos);
        oracle.thresholds(before, nanos, high, low, celsius, path.amps());
    }

    private double highest() {
        double high = cellVolts[0];
        for (double volts : cellVolts) {
            high = Math.max(high, volts);
        }
        return high;
    }

    private double lowest() {
        double low = cellVolts[0];
        for (double volts : cellVolts) {
            low = Math.min(low, volts);
        }
        return low;
    }

    /** Sets an order line; what it moves, moves after its lag. */
    public void line(Line line, boolean level) {
        contacts.line(line, level);
        if (line.kind() == Line.Kind.HEARTBEAT) {
            heartbeat.line(level, nanos);
        }
        refresh();
    }

    /** A normally-closed contact of the loop opens; the loop latches and the coil supply is dead. */
    public void openLoop() {
        loopClosed = false;
        refresh();
    }

    /** A person resets the latched loop. */
    public void resetLoop() {
        loopClosed = true;
        refresh();
    }

    /**
     * Two fingers hold a probe's bead.
     *
     * @param bead its place in the list of beads
     * @param celsius of the fingers
     * @param contactSeconds time constant by which they warm it, above 0
     */
    public void touch(int bead, double celsius, double contactSeconds) {
        beads.touch(bead, celsius, contactSeconds);
    }

    /** The fingers let go. */
    public void letGo() {
        beads.letGo();
    }

    /** Turns the arm switch at the rig. */
    public void arm(boolean on) {
        armed = on;
    }

    /** Whether the arm switch is on. */
    public boolean armed() {
        return armed;
    }

    /**
     * Orders a programmable source: constant current until the outer studs have the set voltage, then constant voltage.
     *
     * @param source number from 0
     * @param on output
     * @param volts at the cells' outer studs, by remote sense; not negative
     * @param amps limit, not negative
     * @throws IllegalArgumentException if there is no such source, it takes no orders, or a value is negative or not a
     *         number
     */
    public void source(int source, boolean on, double volts, double amps) {
        devices.source(source).order(on, volts, amps);
        refresh();
    }

    /**
     * Orders a sink. A resistive one only knows on and off.
     *
     * @param sink number from 0
     * @param on input
     * @param amps taken from the bus, not negative; limited to what the path can drive
     * @throws IllegalArgumentException if there is no such sink, it takes no orders, or the current is negative or not
     *         a number
     */
    public void sink(int sink, boolean on, double amps) {
        devices.sink(sink).order(on, amps);
        refresh();
    }

    /**
     * Breaks something, from this instant on.
     *
     * @throws IllegalArgumentException if the fault names something that is not there, or an impossible size
     */
    public void inflict(Fault fault) {
        switch (fault) {
            case Fault.Weld(Line contact) -> contacts.stick(contact, true);
            case Fault.StuckOpen(Line contact) -> contacts.stick(contact, false);
            case Fault.StuckHeartbeat(boolean level) -> heartbeat.stick(level, nanos);
            case Fault.HeartbeatHeldBy(boolean level) -> heartbeat.heldBy(level);
            case Fault.SlowHeartbeat(double holdSeconds) -> heartbeat.hold(holdSeconds);
            case Fault.HeatBody(int cell, double watts) -> warmth.heat(known(cell), watts);
            case Fault.HeatRate(int cell, double kelvinPerMinute) ->
                warmth.heat(known(cell), kelvinPerMinute / 60 * warmth.joulesPerKelvin(cell));
            case Fault.LooseJoint(int cell, boolean positive, double ohms) ->
                warmth.loosen(known(cell), positive, ohms);
            case Fault.BrokenTap(int tap) -> taps.cut(tap);
            case Fault.TapOffset(int tap, double volts) -> taps.offset(tap, volts);
            case Fault.DetachedBead(int bead) -> beads.detach(bead);
            case Fault.LaidBead(int bead, Node place) -> beads.lay(bead, place, warmth);
            case Fault.SourceDeaf(int source) -> devices.source(source).deafen();
            case Fault.SourceRunaway(int source, double volts) -> devices.source(source).stray(volts, 2);
            case Fault.ChargerHigh(int source, double volts) -> devices.source(source).stray(volts, 1);
            case Fault.BalancerOn(double amps, double aboveVolts) -> {
                protection.balancer(amps, aboveVolts);
                protection.balance(cellVolts);
            }
            case Fault.ProtectionSet(double highVolts, double lowVolts) -> protection.set(highVolts, lowVolts);
            case Fault.SinkDeaf(int sink) -> devices.sink(sink).deafen();
            case Fault.SinkRunaway(int sink, double times) -> devices.sink(sink).stray(times);
            case Fault.BusShort(double ohms) -> path.shorten(ohms);
            case Fault.RoomStep(double kelvin) -> roomOffset += kelvin;
            case Fault.LoopOpens() -> loopClosed = false;
            case Fault.Leak(int cell, double amps) -> cells[known(cell)].leak(amps);
        }
        heartbeat.reach(nanos);
        refresh();
    }

    private int known(int cell) {
        if (cell < 0 || cell >= cells.length) {
            throw new IllegalArgumentException("no cell " + cell + " among " + cells.length);
        }
        return cell;
    }

    /** Current through the shunt, A, positive into the cells. */
    public double amps() {
        return path.amps();
    }

    /** Charge through the shunt since the start, C, positive into the cells. */
    public double coulombs() {
        return account.coulombsIn() - account.coulombsOut();
    }

    /** Charge that went into the cells since the start, C, never negative. */
    public double coulombsIn() {
        return account.coulombsIn();
    }

    /** Charge that came out of the cells since the start, C, never negative. */
    public double coulombsOut() {
        return account.coulombsOut();
    }

    /** Integral of current × (shunt − 25 °C), A·s·K: what a shunt's temperature coefficient weighs. */
    public double coulombKelvins() {
        return account.coulombKelvins();
    }

    /** Energy at the studs of all cells since the start, J, positive into the cells. */
    public double joules() {
        return account.joules();
    }

    /** Energy between bus and pack since the start, measured at the bus, J, positive towards the cells. */
    public double busJoules() {
        return account.busJoules();
    }

    /** Voltage of a cell at its studs. */
    public double cellVolts(int cell) {
        return cellVolts[cell];
    }

    /**
     * Potential at the end of a sense wire, against B−; 0 V if it is cut. Between two taps lie the cells and, with
     * current, what the bars and joints between their studs drop.
     *
     * @param tap 0 at B−, k on the positive stud of the k-th cell
     */
    public double tapVolts(int tap) {
        return taps.volts(tap, cellVolts, warmth, path.amps());
    }

    /**
     * What the bar above a cell's positive stud drops, its joints included; of the last cell its half of the lugs.
     *
     * @param cell from 1
     */
    public double barVolts(int cell) {
        return path.amps() * (cell < cells.length ? warmth.barOhms(cell) : warmth.lugOhms() / 2);
    }

    /** Whether a sense wire is cut, so that what measures it pulls its end to its own ground. */
    public boolean tapCut(int tap) {
        return taps.isCut(tap);
    }

    /** Voltage between the outer studs, bars and joints between the cells included. */
    public double packVolts() {
        return emfVolts + path.amps() * senseOhms;
    }

    /** Voltage of the bus, behind the contactor. */
    public double busVolts() {
        return path.busVolts();
    }

    /** What a source's own meter shows: its output voltage at its terminals, or what the bus puts there. */
    public double sourceVolts(int source) {
        Source own = devices.source(source);
        boolean wired = contacts.source(source) || !own.relayInLead();
        double onBus = wired ? path.busVolts() + path.sourceAmps(source) * p.path().sourceLeadOhms() : 0;
        return own.on() && !wired ? own.volts() : onBus;
    }

    /** What a source delivers, A; with K1 open no more than bleed, pre-charge and sinks take from the bus. */
    public double sourceAmps(int source) {
        return path.sourceAmps(source);
    }

    /** Voltage at a sink's terminals. */
    public double sinkVolts(int sink) {
        boolean wired = contacts.sink(sink) || !devices.sink(sink).relayInLead();
        return wired ? path.sinkVolts(sink) : 0;
    }

    /** What a sink takes, A, not negative. */
    public double sinkAmps(int sink) {
        return path.sinkAmps(sink);
    }

    /** Amplitude of the 100 Hz part of the current through the shunt, A; {@link #amps()} is the mean. */
    public double rippleAmps() {
        return path.rippleAmps(devices.sinks());
    }

    /** Amplitude of what that makes of the bus's voltage, V: it falls where the current is highest. */
    public double rippleVolts() {
        return rippleAmps() * (senseOhms + outerOhms);
    }

    /** Whether the battery's own protection blocks charge or discharge now. */
    public boolean protectionOpen() {
        return protection.chargeBlocked() || protection.dischargeBlocked();
    }

    /** Whether the fuse has blown. */
    public boolean fuseBlown() {
        return fuse.blown();
    }

    /** Whether a source's output is on; a charger's while it has mains and has not finished. */
    public boolean sourceOn(int source) {
        return devices.source(source).on();
    }

    /** Whether a sink's input is on; an inverter's while it runs, its thermostat aside. */
    public boolean sinkOn(int sink) {
        return devices.sink(sink).on();
    }

    /** Temperature of a probe's sensing end, by its place in the list of beads. */
    public double beadCelsius(int bead) {
        return beads.celsius(bead);
    }

    /** True temperature of a place. */
    public double celsius(Node node) {
        return node.part() == Node.Part.ROOM ? celsiusOfRoom(nanos) : warmth.celsius(warmth.index(node));
    }

    private double celsiusOfRoom(long instant) {
        return p.room().celsius() + roomOffset + p.room().kelvinPerHour() * (instant / HOUR_NANOS);
    }

    /** Mirror contact of K1: true while its main contact is closed, for whatever reason. */
    public boolean feedback() {
        return contacts.contactor();
    }

    /** Whether the coil supply is alive: loop closed and heartbeat stage holding. */
    public boolean coilFeed() {
        return loopClosed && heartbeat.alive();
    }

    /** Whether the latching loop is closed. */
    public boolean loopClosed() {
        return loopClosed;
    }

    /** Whether the sounder is fed: by its line, or while armed through the resting side of the heartbeat stage. */
    public boolean sounding() {
        return contacts.sounder() || armed && !heartbeat.alive();
    }

    /** True state of charge of a cell, 0 empty to 1 full. */
    public double charge(int cell) {
        return cells[cell].charge();
    }

    /**
     * True capacity of a cell: charge from 3.60 V and 0.05 C to 2.50 V at 0.1 C and 25 °C, found by running it.
     *
     * @param cell number from 0
     */
    public double capacityAmpHours(int cell) {
        return CellProof.ampHours(p.cells().get(cell));
    }

    /**
     * True resistance of a cell at its studs: ten seconds, half charge, 25 °C, 0.5 C of discharge.
     *
     * @param cell number from 0
     */
    public double ohms10s(int cell) {
        return CellProof.ohms10s(p.cells().get(cell));
    }

    /** What truly happened. */
    public Oracle oracle() {
        return oracle;
    }

    /** Asks the oracle to note the first crossing of a threshold, from this instant on. */
    public void watch(Threshold threshold) {
        oracle.watch(threshold);
        observe(nanos);
    }

    /** Lets the oracle forget everything, thresholds too. */
    public void resetOracle() {
        oracle = new Oracle();
        observe(nanos);
    }
}
