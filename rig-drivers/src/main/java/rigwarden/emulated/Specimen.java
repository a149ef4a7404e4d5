package rigwarden.emulated;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rigwarden.pack.Bead;
import rigwarden.pack.CellParameters;
import rigwarden.pack.Chance;
import rigwarden.pack.Load;
import rigwarden.pack.Node;
import rigwarden.pack.PathParameters;
import rigwarden.pack.Protection;
import rigwarden.pack.Room;
import rigwarden.pack.Supply;
import rigwarden.pack.WarmthParameters;
import rigwarden.pack.WorldParameters;
import rigwarden.rig.BusSide;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Calibration;
import rigwarden.rig.Device;
import rigwarden.rig.Instrument;
import rigwarden.rig.PathPart;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/** Draws one specimen of a rig: every part with errors out of the distribution that its data sheet or file states. */
final class Specimen {
    private static final double INVERTER_FARADS = 0.02;
    private static final double LEAST_FARADS = 0.001;
    private static final double RIPPLE_SHARE = 0.3;
    private static final double THERMOSTAT_ON_S = 900;
    private static final double PROTECTION_RELEASE_V = 0.1;
    private static final double PROTECTION_OHMS = 0.3e-3;
    /** Sound cells of one lot lie within so much of each other's resistance: common practice, no source. */
    private static final double OHMS_SHARE = 0.05;
    private static final double BALANCE_ABOVE_V = 3.40;
    private static final double BALANCE_A = 0.2;

    private final Rig rig;
    private final long seed;

    private final boolean edges;
    private final boolean quiet;

    Specimen(Rig rig, long seed) {
        this(rig, seed, false, false);
    }

    private Specimen(Rig rig, long seed, boolean edges, boolean quiet) {
        this.rig = rig;
        this.seed = seed;
        this.edges = edges;
        this.quiet = quiet;
    }

    /** One whose errors all stand at their limits, or at two standard deviations where they have none; the sides are drawn. */
    static Specimen atTheEdges(Rig rig, long seed) {
        return new Specimen(rig, seed, true, false);
    }

    /** One whose chips have no noise of their own: what stands still before them gives one code for hours. */
    static Specimen quiet(Rig rig, long seed) {
        return new Specimen(rig, seed, false, true);
    }

    /** Root mean square of a chip's noise, where this is what it usually has. */
    double noise(double usual) {
        return quiet ? 0 : usual;
    }

    Chance chance(String part, String purpose) {
        return Chance.of(seed, part, purpose);
    }

    /** Rectangular within ± the limits. */
    double within(String part, String purpose, double limits) {
        double drawn = 2 * chance(part, purpose).nextDouble() - 1;
        return limits * (edges ? Math.signum(drawn) : drawn);
    }

    /** Normal with this standard deviation. */
    double around(String part, String purpose, double deviation) {
        double drawn = chance(part, purpose).nextGaussian();
        return deviation * (edges ? 2 * Math.signum(drawn) : drawn);
    }

    double shuntOhms() {
        Optional<Calibrated> told = told(Calibratable.CURRENT);
        if (told.isPresent()) {
            return rig.shunt().ohms() * told.get().scale();
        }
        return rig.shunt().ohms() * (1 + within("shunt", "tolerance", rig.shunt().toleranceRelative()));
    }

    /** Resistance of the shunt per kelvin away from 25 °C, relative. */
    double shuntPerKelvin() {
        return within("shunt", "temperature", rig.shunt().perKelvin());
    }

    /** A channel that a calibration of a real rig corrects errs by what that calibration says, and is left with its doubt. */
    Optional<Calibrated> told(String channel) {
        return rig.calibration(channel).filter(found -> found.emulatedSeed().stream().noneMatch(its -> its == seed))
                .map(found -> Calibrated.drawn(found, this));
    }

    /** What the chip's bus pin makes of the pack's voltage, before its own errors. */
    Calibrated busPin() {
        return told(Calibratable.PACK).orElse(Calibrated.STRAIGHT);
    }

    /** What truly stands before an input ÷ what its divider makes of it, over what the file says of both. */
    double inputRatio(VoltageInput input) {
        Optional<Calibrated> told = told(input.name());
        if (told.isPresent()) {
            return told.get().scale();
        }
        Calibration calibration = input.calibration();
        double wrong = calibration.known()
                ? around(input.name(), "gain", calibration.gainU() / 2)
                : within(input.name(), "divider", input.dividerRelative());
        return (1 + wrong) / calibration.gain();
    }

    /** What an input reads too much after its calibration, V before its divider; 0 without one. */
    double inputOffset(VoltageInput input) {
        Optional<Calibrated> told = told(input.name());
        if (told.isPresent()) {
            return told.get().shift() / told.get().scale();
        }
        Calibration calibration = input.calibration();
        return calibration.known()
                ? around(input.name(), "offset", calibration.offsetU() / 2) - calibration.offset()
                : 0;
    }

    /** What its chips err by. */
    ChipErrors chips() {
        return new ChipErrors(rig, this);
    }

    ScpiInstrument.Errors instrumentErrors(String name, Instrument instrument) {
        return new ScpiInstrument.Errors(within(name, "volts", instrument.voltsU() / 2), 0,
                within(name, "amps", instrument.ampsU() / 2), 0);
    }

    Chance noise(String part) {
        return chance(part, "noise");
    }

    WorldParameters world() {
        CellParameters typical = CellParameters.lfp105().inParallel(rig.cells().parallel());
        double size = rig.cells().ratedAmpHours() / typical.nominalAmpHours();
        double spread = rig.rehearsed().capacitySpread();
        List<CellParameters> cells = IntStream.range(0, rig.cells().series())
                .mapToObj(k -> typical.withOhmsTimes((1 + within("cell " + (k + 1), "ohms", OHMS_SHARE)) / size).withAmpHours(typical.ampHours() * size
                        * (1 + spread * chance("cell " + (k + 1), "capacity").nextGaussian())))
                .toList();
        List<Bead> beads = rig.probes().stream().map(p -> new Bead(node(p), p.lagSeconds())).toList();
        return WorldParameters.inSeries(rig.cells().series())
                .withCells(cells)
                .withPath(path())
                .withWarmth(rig.cells().series() == 1 ? WarmthParameters.alone() : WarmthParameters.inPack())
                .withRoom(new Room(rig.rehearsed().roomCelsius(), rig.rehearsed().roomKelvinPerHour()))
                .withProtection(rig.protection().map(this::protection).orElse(Protection.NONE))
                .withBeads(beads);
    }

    private PathParameters path() {
        BusSide bus = rig.busSide();
        double inInverters = rig.devices().stream().filter(d -> d instanceof Device.Inverter).count() * INVERTER_FARADS;
        return PathParameters.bench()
                .withBus(bus.prechargeOhms(), Math.max(bus.farads() - inInverters, LEAST_FARADS), bus.bleedOhms())
                .withShunt(rig.shunt().ohms())
                .withFuse(fuseAmps())
                .withSupplies(rig.devices(true).stream().map(this::supply).toArray(Supply[]::new))
                .withLoads(rig.devices(false).stream().map(this::load).toArray(Load[]::new));
    }

    /** The weakest fuse of the common path; 0 without one. */
    private double fuseAmps() {
        return rig.path().stream().filter(part -> part.kind() == PathPart.Kind.FUSE && part.common())
                .mapToDouble(PathPart::ratedAmps).min().orElse(0);
    }

    private Supply supply(Device source) {
        return source instanceof Device.PlainCharger c
                ? new Supply.Charger(c.amps() * (1 + within(c.name(), "amps", c.ampsRelative())), c.startSeconds(),
                        c.volts() * (1 + within(c.name(), "volts", c.voltsRelative())), c.finishAmps(), c.floats(),
                        c.floatVolts())
                : new Supply.Programmable();
    }

    private Load load(Device sink) {
        return sink instanceof Device.Inverter i
                ? new Load.Inverter(i.watts(), i.efficiency(), i.quitVolts(), i.restartVolts(), i.startSeconds(),
                        INVERTER_FARADS, RIPPLE_SHARE, i.pauseSeconds() > 0 ? THERMOSTAT_ON_S : 0, i.pauseSeconds())
                : new Load.Electronic(0.1);
    }

    /** Drawn within the limits that the file states; its releases and its resistance are assumptions of this project. */
    private Protection protection(rigwarden.rig.Protection stated) {
        double high = stated.highVolts() + within("protection", "high", stated.toleranceVolts());
        double low = stated.lowVolts() + within("protection", "low", stated.toleranceVolts());
        return new Protection(high, stated.delaySeconds(), high - PROTECTION_RELEASE_V, low, stated.delaySeconds(),
                low + 2 * PROTECTION_RELEASE_V, PROTECTION_OHMS, stated.balances() ? BALANCE_ABOVE_V : 0,
                stated.balances() ? BALANCE_A : 0);
    }

    /** States of charge in which the cells arrived: somewhere in the middle, spread as the file says, in any order. */
    double[] arrival() {
        int cells = rig.cells().series();
        double middle = 0.4 + 0.15 * chance("lot", "arrival").nextDouble();
        if (cells == 1) {
            return new double[] {middle};
        }
        double[] charges = new double[cells];
        double[] order = new double[cells];
        for (int i = 0; i < cells; i++) {
            order[i] = chance("cell " + (i + 1), "arrival").nextDouble();
        }
        double[] sorted = order.clone();
        Arrays.sort(sorted);
        for (int i = 0; i < cells; i++) {
            double rank = Arrays.binarySearch(sorted, order[i]) / (cells - 1.0);
            charges[i] = middle + rig.rehearsed().chargeSpread() * (rank - 0.5);
        }
        return charges;
    }

    private static Node node(Probe probe) {
        return switch (probe.place()) {
            case STUD -> Node.stud(probe.cell() - 1, probe.positive());
            case BAR -> Node.link(probe.cell());
            case SHUNT_BODY -> Node.SHUNT;
            case CONTACTOR_BODY -> Node.CONTACTOR;
            case ROOM, LOOSE -> Node.ROOM;
            default -> Node.body(probe.cell() - 1);
        };
    }
}
