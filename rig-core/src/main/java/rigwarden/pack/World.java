package rigwarden.pack;

import java.util.Arrays;

/**
 * The truth: cells, path, contacts, source, sink and heat, moved on in steps of at most 100 ms and split at every
 * instant at which a contact or the heartbeat stage changes. It can be copied at any instant and run on from there.
 * Current is positive into the cells. Its size: one state, moved by one method; what can stand alone stands alone.
 */
public final class World {
    private static final long STEP_NANOS = 100_000_000L;

    private final WorldParameters p;
    private final Cell[] cells;
    private final Heat heat;
    private final Contacts contacts;
    private final Oracle oracle;
    private final double[] beads;
    private final double[] bodyWatts;
    private final boolean[] tapCut;
    private final boolean[] beadOff;
    private final boolean[] beadOpen;
    private long nanos;
    private double roomCelsius;
    private boolean armed;
    private double busVolts;
    private double amps;
    private double coulombs;
    private double coulombKelvins;
    private double joules;
    private double busJoules;
    private boolean sourceOn;
    private double sourceSetVolts;
    private double sourceSetAmps;
    private boolean sourceSilent;
    private double sourceAwayVolts;
    private boolean sinkOn;
    private double sinkSetAmps;
    private boolean sinkSilent;
    private double beadSeconds = Double.NaN;
    private final double[] beadFollows;

    /**
     * A bench at rest, everything open.
     *
     * @param p what it is made of
     * @param charge state of charge of every cell, 0…1
     */
    public World(WorldParameters p, double charge) {
        this.p = p;
        roomCelsius = p.roomCelsius();
        cells = new Cell[p.cells().size()];
        for (int k = 0; k < cells.length; k++) {
            cells[k] = new Cell(p.cells().get(k), charge, roomCelsius);
        }
        heat = new Heat(cells.length, roomCelsius, p.path().jointOhms());
        contacts = new Contacts(p.contacts());
        oracle = new Oracle();
        beads = new double[p.beads().size()];
        Arrays.fill(beads, roomCelsius);
        beadFollows = new double[beads.length];
        bodyWatts = new double[cells.length];
        tapCut = new boolean[cells.length];
        beadOff = new boolean[beads.length];
        beadOpen = new boolean[beads.length];
    }

    private World(World other) {
        p = other.p;
        cells = new Cell[other.cells.length];
        for (int k = 0; k < cells.length; k++) {
            cells[k] = other.cells[k].copy();
        }
        heat = new Heat(other.heat);
        contacts = new Contacts(other.contacts);
        oracle = new Oracle(other.oracle);
        beads = other.beads.clone();
        beadFollows = other.beadFollows.clone();
        bodyWatts = other.bodyWatts.clone();
        tapCut = other.tapCut.clone();
        beadOff = other.beadOff.clone();
        beadOpen = other.beadOpen.clone();
        nanos = other.nanos;
        roomCelsius = other.roomCelsius;
        armed = other.armed;
        busVolts = other.busVolts;
        amps = other.amps;
        coulombs = other.coulombs;
        coulombKelvins = other.coulombKelvins;
        joules = other.joules;
        busJoules = other.busJoules;
        sourceOn = other.sourceOn;
        sourceSetVolts = other.sourceSetVolts;
        sourceSetAmps = other.sourceSetAmps;
        sourceSilent = other.sourceSilent;
        sourceAwayVolts = other.sourceAwayVolts;
        sinkOn = other.sinkOn;
        sinkSetAmps = other.sinkSetAmps;
        sinkSilent = other.sinkSilent;
        beadSeconds = other.beadSeconds;
    }

    /** Another world, the same in everything, that goes its own way from here. */
    public World copy() {
        return new World(this);
    }

    public long nanos() {
        return nanos;
    }

    /** Lets time pass; a time in the past changes nothing. */
    public void advanceTo(long until) {
        while (nanos < until) {
            long next = Math.min(Math.min(until, nanos + STEP_NANOS), contacts.nextNanos());
            move(Math.max(next, nanos));
            contacts.settle(nanos);
        }
    }

    private void move(long next) {
        double seconds = (next - nanos) * 1e-9;
        solve();
        double before = packVolts();
        double charge = amps * seconds;
        if (seconds > 0) {
            double busBefore = busVolts;
            bus(seconds);
            if (!contacts.closed(Line.CONTACTOR) && contacts.closed(Line.PRECHARGE)) {
                charge = -(busVolts - busBefore) * p.bus().farads();
                amps = charge / seconds;
            }
            for (int k = 0; k < cells.length; k++) {
                bodyWatts[k] = cells[k].move(amps, seconds);
            }
            heat.move(cells, bodyWatts, amps, p.path(), roomCelsius, seconds);
            roomCelsius += p.roomKelvinPerHour() * seconds / 3600;
            followBeads(seconds);
        }
        nanos = next;
        oracle.current(amps, nanos);
        joules += (before + packVolts()) / 2 * charge;
        busJoules += busVolts * charge;
        coulombs += charge;
        coulombKelvins += charge * (heat.shunt - 25);
        for (int k = 0; k < cells.length; k++) {
            oracle.cell(cellVolts(k), cells[k].bodyCelsius, nanos);
        }
        for (double stud : heat.studs) {
            oracle.node(stud, "stud");
        }
        oracle.node(heat.contactor, "contactor");
        oracle.node(heat.shunt, "shunt");
    }

    /** The current that this instant's contacts, source and sink make. */
    private void solve() {
        amps = 0;
        if (!contacts.closed(Line.CONTACTOR)) {
            return;
        }
        double emf = 0;
        double cellOhms = 0;
        for (Cell cell : cells) {
            emf += cell.emfVolts();
            cellOhms += cell.ohms();
        }
        if (sourceOn && contacts.closed(Line.SOURCE_RELAY)) {
            double wantedVolts = sourceSetVolts + sourceAwayVolts;
            double most = Math.min(p.sourceAmps(), sourceAwayVolts > 0 ? 2 * sourceSetAmps + 5 : sourceSetAmps);
            amps += Math.clamp((wantedVolts - emf) / cellOhms, 0, most);
        }
        if (sinkOn && contacts.closed(Line.SINK_RELAY)) {
            amps -= Math.clamp(emf / (cellOhms + pathOhms()), 0, sinkSetAmps);
        }
        amps -= (emf + amps * (cellOhms + pathOhms())) / p.bus().bleedOhms();
    }

    private double pathOhms() {
        return heat.jointsOhms() + p.path().linkOhms() * 2 * cells.length + p.path().shuntOhms()
                + p.path().contactorOhms() + p.path().cableOhms();
    }

    private void bus(double seconds) {
        if (contacts.closed(Line.CONTACTOR)) {
            busVolts = packVolts() + amps * pathOhms();
            return;
        }
        if (sourceOn && contacts.closed(Line.SOURCE_RELAY)) {
            busVolts = sourceSetVolts + sourceAwayVolts;
            return;
        }
        double into = contacts.closed(Line.PRECHARGE) ? 1 / p.bus().prechargeOhms() : 0;
        double outOf = 1 / p.bus().bleedOhms();
        double goal = packVolts() * into / (into + outOf);
        busVolts = goal + (busVolts - goal) * Math.exp(-seconds * (into + outOf) / p.bus().farads());
    }

    private void followBeads(double seconds) {
        if (seconds != beadSeconds) {
            beadSeconds = seconds;
            for (int i = 0; i < beads.length; i++) {
                beadFollows[i] = -Math.expm1(-seconds / p.beads().get(i).lagSeconds());
            }
        }
        for (int i = 0; i < beads.length; i++) {
            WorldParameters.Bead bead = p.beads().get(i);
            double at = beadOff[i] ? roomCelsius : celsius(bead.place(), bead.cell());
            beads[i] += (at - beads[i]) * beadFollows[i];
        }
    }

    /** Sets an order line, from this instant. */
    public void line(Line line, boolean level) {
        contacts.order(line, level, nanos);
    }

    /** Opens the loop of normally-closed contacts; it latches. */
    public void openLoop() {
        contacts.loopClosed = false;
        contacts.settle(nanos);
    }

    /** A person closes the latched loop again. */
    public void resetLoop() {
        contacts.loopClosed = true;
        contacts.settle(nanos);
    }

    public void arm(boolean on) {
        armed = on;
    }

    public boolean armed() {
        return armed;
    }

    /** Orders to the source; a silent one hears nothing. */
    public void source(boolean on, double volts, double amps) {
        if (!sourceSilent) {
            sourceOn = on;
            sourceSetVolts = volts;
            sourceSetAmps = amps;
        }
    }

    /** Orders to the sink; a silent one hears nothing. */
    public void sink(boolean on, double amps) {
        if (!sinkSilent) {
            sinkOn = on;
            sinkSetAmps = amps;
        }
    }

    /** Current through the shunt in the last step, A. */
    public double amps() {
        return amps;
    }

    /** Charge through the cells' studs since the start, A·s, positive into them. */
    public double coulombs() {
        return coulombs;
    }

    /** Integral of current × (shunt − 25 °C), A·s·K: what a shunt's temperature coefficient weighs. */
    public double coulombKelvins() {
        return coulombKelvins;
    }

    /** Energy through the cells' studs since the start, J, positive into them. */
    public double joules() {
        return joules;
    }

    /** Energy at the bus since the start, J, positive into the cells. */
    public double busJoules() {
        return busJoules;
    }

    /** Voltage at a cell's studs, V; {@code cell} from 0. */
    public double cellVolts(int cell) {
        return cells[cell].emfVolts() + amps * cells[cell].ohms();
    }

    /** What the tap's wire carries: nothing when it is cut, since a bleed resistor pulls it down. */
    public double tapVolts(int cell) {
        return tapCut[cell] ? 0 : cellVolts(cell);
    }

    public double packVolts() {
        double sum = 0;
        for (int k = 0; k < cells.length; k++) {
            sum += cellVolts(k);
        }
        return sum;
    }

    public double busVolts() {
        return busVolts;
    }

    public boolean sourceOn() {
        return sourceOn;
    }

    public boolean sourceSilent() {
        return sourceSilent;
    }

    public boolean sinkSilent() {
        return sinkSilent;
    }

    /** Voltage that the source shows at its terminals, V. */
    public double sourceVolts() {
        if (contacts.closed(Line.SOURCE_RELAY)) {
            return busVolts;
        }
        return sourceOn ? sourceSetVolts + sourceAwayVolts : 0;
    }

    /** Current that the source delivers, A. */
    public double sourceAmps() {
        return sourceOn && contacts.closed(Line.SOURCE_RELAY) ? Math.max(amps, 0) : 0;
    }

    public boolean sinkOn() {
        return sinkOn;
    }

    public double sinkVolts() {
        return contacts.closed(Line.SINK_RELAY) ? busVolts : 0;
    }

    /** Current that the sink takes, A, positive. */
    public double sinkAmps() {
        return sinkOn && contacts.closed(Line.SINK_RELAY) ? Math.max(-amps, 0) : 0;
    }

    public boolean feedback() {
        return contacts.closed(Line.CONTACTOR);
    }

    public boolean coilFeed() {
        return contacts.feed();
    }

    public boolean loopClosed() {
        return contacts.loopClosed;
    }

    /** Temperature of a bead, °C. */
    public double beadCelsius(int bead) {
        return beads[bead];
    }

    public boolean beadOpen(int bead) {
        return beadOpen[bead];
    }

    /** True temperature of a place, °C; {@code cell} from 0, ignored where the place belongs to none. */
    public double celsius(Place place, int cell) {
        return switch (place) {
            case BODY -> cells[cell].bodyCelsius;
            case STUD_NEGATIVE -> heat.studs[2 * cell];
            case STUD_POSITIVE -> heat.studs[2 * cell + 1];
            case SHUNT -> heat.shunt;
            case CONTACTOR -> heat.contactor;
            case ROOM -> roomCelsius;
        };
    }

    /** State of charge of a cell; {@code cell} from 0. */
    public double charge(int cell) {
        return cells[cell].charge;
    }

    public Oracle oracle() {
        return oracle;
    }

    public WorldParameters parameters() {
        return p;
    }

    /** Something goes wrong, from this instant. */
    public void inflict(Fault fault) {
        switch (fault) {
            case Fault.Weld f -> contacts.weld(f.contact(), nanos);
            case Fault.StuckOpen f -> contacts.stickOpen(f.contact(), nanos);
            case Fault.StuckHeartbeat f -> {
                contacts.order(Line.HEARTBEAT, f.level(), nanos);
                contacts.stickHeartbeat();
            }
            case Fault.HeatRate f -> cells[f.cell()].extraKelvinPerSecond = f.kelvinPerMinute() / 60;
            case Fault.LooseJoint f -> heat.jointOhms[2 * f.cell() + (f.positive() ? 1 : 0)] += f.addedOhms();
            case Fault.BrokenTap f -> tapCut[f.cell()] = true;
            case Fault.DetachedBead f -> beadOff[f.bead()] = true;
            case Fault.OpenProbe f -> beadOpen[f.bead()] = true;
            case Fault.SilentSource _ -> sourceSilent = true;
            case Fault.SourceRunaway f -> sourceAwayVolts = f.volts();
            case Fault.SilentSink _ -> sinkSilent = true;
            case Fault.RoomStep f -> roomCelsius += f.kelvin();
            case Fault.LoopOpens _ -> openLoop();
            case Fault.Leak f -> cells[f.cell()].extraLeakAmps = f.amps();
            case Fault.SlowHeartbeat f -> contacts.hold(Math.round(f.seconds() * 1e9));
        }
    }
}
