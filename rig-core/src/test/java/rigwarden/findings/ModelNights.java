package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.Warmth;
import rigwarden.pack.CellParameters;
import rigwarden.pack.Chance;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.pack.Load;
import rigwarden.pack.Node;
import rigwarden.pack.Room;
import rigwarden.pack.Supply;
import rigwarden.pack.WarmthParameters;
import rigwarden.pack.WorldParameters;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** Short nights on the model's rigs, with what was true in them. */
final class ModelNights {
    private static final double SCAN = 0.1;
    private static final double SLOW_SCAN = 1;
    private static final double FILL_SCAN = 4;
    private static final double WALKED_AMPS = 30;

    /** A night's rig, what was kept of it, and its truths, by step. */
    record Night(Rig rig, Gathered gathered, List<Truth> truths) {}

    private final Rig rig;
    private final ModelRig model;
    private Trace trace;
    private final List<Truth> truths = new ArrayList<>();
    private final Chance chance;
    private int step;
    private List<Cut> cuts = List.of();
    private Optional<Parted> parted = Optional.empty();

    /**
     * The supply of the whole rig is cut in a discharge, and the run goes on as another.
     *
     * @param ampHours that had come out by then, truly
     * @param unseenSeconds how long the current still flows after the last scan
     * @param outageSeconds from the last scan to the first of the run that goes on
     */
    record Cut(double ampHours, double unseenSeconds, double outageSeconds) {}

    /** What was kept until the last cut, and the current that was broken off. */
    private record Parted(Gathered before, Cut cut, double amps) {}

    private ModelNights(Rig rig, WorldParameters p, double[] charges, long seed, Consumer<Row> also) {
        this.rig = rig;
        trace = new Trace(rig);
        chance = Chance.of(seed, "night", "opening");
        model = new ModelRig(rig, p, charges, seed, row -> {
            trace.take(row);
            also.accept(row);
        });
    }

    /** One cell: filled up, rested, and emptied at two rates. */
    static Night oneCell(long seed, double roomCelsius, Consumer<ModelRig> prepared, Consumer<Row> also) {
        Rig rig = DrawnCalibrations.of(TestRigs.oneCell(), seed);
        Chance chance = Chance.of(seed, "one cell", "capacity");
        WorldParameters p = WorldParameters.oneCell().withWarmth(WarmthParameters.alone()).withRoom(new Room(roomCelsius, 0))
                .withCells(List.of(CellParameters.lfp105().withAmpHours(108 * (1 + 0.004 * chance.nextGaussian()))));
        ModelNights night = new ModelNights(rig, p, new double[] {0.97}, seed, also);
        prepared.accept(night.model);
        night.fill();
        night.rest(1800);
        night.drain("discharge", 0, 10.5, 0);
        night.rest(600);
        return night.done();
    }

    /** The same emptied at 0.5 C. */
    static Night oneCellFast(long seed, double roomCelsius, Consumer<ModelRig> prepared, Consumer<Row> also) {
        return fast(seed, roomCelsius, prepared, also).done();
    }

    private static ModelNights fast(long seed, double roomCelsius, Consumer<ModelRig> prepared, Consumer<Row> also) {
        Rig rig = DrawnCalibrations.of(TestRigs.oneCell(), seed);
        WorldParameters p = WorldParameters.oneCell().withWarmth(DrawnCells.cooledAlone(seed)).withRoom(new Room(roomCelsius, 0))
                .withCells(List.of(CellParameters.lfp105().withSlowRise(DrawnCells.ends(seed)).withJoulesPerKelvin(DrawnCells.joulesPerKelvin(seed))));
        ModelNights night = new ModelNights(rig, p, new double[] {0.97}, seed, also);
        prepared.accept(night.model);
        night.fill();
        night.rest(1800);
        night.drain("discharge", 0, 52.5, 0.4);
        night.rest(600);
        return night;
    }

    /** The same, and filled up again, so that the account can close. */
    static Night oneCellAndBack(long seed, double roomCelsius, Consumer<ModelRig> prepared) {
        ModelNights night = fast(seed, roomCelsius, prepared, _ -> { });
        night.fill();
        night.rest(1800);
        return night.done();
    }

    /** One cell filled up, and emptied at 0.5 C with cuts. */
    static Night oneCellCut(long seed, List<Cut> cuts) {
        Rig rig = DrawnCalibrations.of(TestRigs.oneCell(), seed);
        WorldParameters p = WorldParameters.oneCell().withWarmth(WarmthParameters.alone()).withRoom(new Room(25, 0));
        ModelNights night = new ModelNights(rig, p, new double[] {0.97}, seed, _ -> { });
        night.fill();
        night.rest(1800);
        night.cuts = cuts;
        night.drain("discharge", 0, 52.5, 0);
        night.rest(600);
        return night.done();
    }

    /** The pack emptied by the inverter with cuts. */
    static Night packCut(long seed, List<Cut> cuts) {
        ModelNights night = packNight(seed, 22, 0.99, _ -> { });
        night.cuts = cuts;
        night.rest(300);
        night.drain("discharge", 1, 0, 0);
        night.rest(600);
        return night.done();
    }

    /** Eight cells, nearly full, emptied in a heat run by the inverter. */
    static Night pack(long seed, double roomCelsius, double highestCharge, Consumer<ModelRig> prepared, Consumer<Row> also) {
        ModelNights night = packNight(seed, roomCelsius, highestCharge, also);
        prepared.accept(night.model);
        night.rest(300);
        night.drain("heat_run", 1, 0, 0.4);
        night.rest(600);
        return night.done();
    }

    private static ModelNights packNight(long seed, double roomCelsius, double highestCharge, Consumer<Row> also) {
        Rig rig = DrawnCalibrations.of(TestRigs.eightCells(), seed);
        Chance chance = Chance.of(seed, "pack", "cells");
        List<CellParameters> cells = new ArrayList<>();
        double[] charges = new double[8];
        for (int k = 0; k < 8; k++) {
            cells.add(CellParameters.lfp105().withAmpHours(108 * (1 + 0.004 * chance.nextGaussian()))
                    .withOhmsTimes(1 + 0.03 * chance.nextGaussian()).withSlowRise(DrawnCells.ends(seed)).withJoulesPerKelvin(DrawnCells.joulesPerKelvin(seed)));
            charges[k] = highestCharge - 0.03 * chance.nextDouble();
        }
        WorldParameters pack = WorldParameters.pack();
        WorldParameters p = pack.withCells(cells).withWarmth(DrawnCells.cooledInPack(seed)).withRoom(new Room(roomCelsius, 0))
                .withPath(pack.path().withSupplies(Supply.Charger.usual())
                        .withLoads(new Load.Electronic(0.1), new Load.Inverter(1500, 0.9, 19, 24, 5, 20e-3, 0, 900, 60)));
        return new ModelNights(rig, p, charges, seed, also);
    }

    static Consumer<ModelRig> sound() {
        return _ -> { };
    }

    /** The joint above a cell, from 1, has more resistance. */
    static Consumer<ModelRig> loose(int cell, double ohms) {
        return model -> model.world().inflict(new Fault.LooseJoint(cell - 1, true, ohms));
    }

    private void fill() {
        model.begin(++step, "charge");
        double before = model.world().coulombs();
        model.relay(Line.source(0), true);
        model.world().source(0, true, 3.60 * rig.cells().series(), 21);
        model.live(20, SCAN);
        while (model.world().amps() > 5.25) {
            model.step(model.world().cellVolts(0) < 3.45 ? FILL_SCAN : SLOW_SCAN);
        }
        model.world().source(0, false, 0, 0);
        model.relay(Line.source(0), false);
        model.end(Ended.TAPER);
        truths.add(Truth.of((model.world().coulombs() - before) / 3600));
    }

    private void rest(double seconds) {
        model.begin(++step, "rest");
        double before = model.world().coulombs();
        model.relay(Line.CONTACTOR, false);
        model.live(20, SCAN);
        model.live(seconds - 20, SLOW_SCAN);
        model.relay(Line.CONTACTOR, true);
        model.end(Ended.SETTLED);
        truths.add(Truth.of((model.world().coulombs() - before) / 3600));
    }

    private double lowest() {
        double low = model.world().cellVolts(0);
        for (int k = 1; k < rig.cells().series(); k++) {
            low = Math.min(low, model.world().cellVolts(k));
        }
        return low;
    }

    /** Until the first cell is at 2.50 V; a look at the warmth after a part of a usual time. */
    private void drain(String kind, int sink, double amps, double earlyHours) {
        model.begin(++step, kind);
        double before = model.world().coulombs();
        long began = model.world().nanos();
        model.relay(Line.sink(sink), true);
        if (amps > 0) {
            model.world().sink(sink, true, amps);
        }
        model.live(20, SCAN);
        List<Warmth> early = List.of();
        Optional<Truth.Walk> walk = Optional.empty();
        double squares = 0;
        long rows = 0;
        while (lowest() > 2.50) {
            model.step(lowest() < 2.9 ? SCAN : earlyHours > 0 ? SLOW_SCAN : FILL_SCAN);
            if (!cuts.isEmpty() && (before - model.world().coulombs()) / 3600 >= cuts.getFirst().ampHours()) {
                cut(kind, sink, amps);
            }
            boolean due = earlyHours > 0 && model.world().nanos() - began > earlyHours * 3600e9;
            if (due && early.isEmpty()) {
                early = trace.warmthNow();
            }
            if (due && walk.isEmpty() && model.world().amps() < -WALKED_AMPS) {
                walk = Optional.of(walk());
            }
            squares += due ? model.world().amps() * model.world().amps() : 0;
            rows += due ? 1 : 0;
        }
        model.live(3, SCAN);
        double phase = SCAN * (0.05 + 0.9 * chance.nextDouble());
        model.pass(phase);
        int cells = rig.cells().series();
        double[] volts = new double[cells];
        Arrays.setAll(volts, model::trueVolts);
        double flowing = model.world().amps();
        double[] celsius = new double[cells];
        Arrays.setAll(celsius, k -> model.world().celsius(Node.body(k)));
        double[] bars = new double[Math.max(0, cells - 1)];
        Arrays.setAll(bars, k -> model.world().celsius(Node.link(k + 1)));
        model.relay(Line.sink(sink), false);
        if (amps > 0) {
            model.world().sink(sink, false, 0);
        }
        double[][] ohms = opened(volts, flowing, phase);
        model.end(Ended.CUT_OFF);
        double through = model.world().coulombs() - before - model.wrong().balancerAmps * (model.world().nanos() - began) * 1e-9;
        truths.add(new Truth(through / 3600, ohms, celsius, bars, early,
                (model.world().nanos() - began) / 3600e9, rows == 0 ? 0 : squares / rows, walk));
    }

    /** The step is broken off, and goes on in another run with a clock and scans of its own. */
    private void cut(String kind, int sink, double amps) {
        Cut cut = cuts.getFirst();
        cuts = cuts.subList(1, cuts.size());
        double flowing = Math.abs(model.world().amps());
        model.end(Ended.CUT);
        parted = Optional.of(new Parted(gathered(), cut, flowing));
        model.pass(cut.unseenSeconds());
        model.relay(Line.CONTACTOR, false);
        model.relay(Line.sink(sink), false);
        if (amps > 0) {
            model.world().sink(sink, false, 0);
        }
        model.pass(cut.outageSeconds() - cut.unseenSeconds());
        trace = new Trace(rig);
        model.anew();
        model.live(2, SCAN);
        model.begin(step, kind);
        model.relay(Line.CONTACTOR, true);
        model.relay(Line.sink(sink), true);
        if (amps > 0) {
            model.world().sink(sink, true, amps);
        }
        model.live(20, SCAN);
    }

    private Gathered gathered() {
        return parted.map(part -> Joined.of(part.before(), part.cut().outageSeconds(), part.amps(), trace.end())).orElseGet(trace::end);
    }

    private Truth.Walk walk() {
        double[] volts = new double[Math.max(0, rig.cells().series() - 1)];
        Arrays.setAll(volts, k -> model.world().barVolts(k + 1));
        return new Truth.Walk(volts, model.world().amps(), model.readAmps());
    }

    /** The contact opened so long after a scan; what is true at the delays is looked at between the scans. */
    private double[][] opened(double[] before, double flowing, double phase) {
        double[] at = {0.1, 1, 10};
        double[][] ohms = new double[at.length][before.length];
        double since = 0;
        double next = SCAN - phase;
        for (int i = 0; i < at.length; i++) {
            while (next <= at[i]) {
                model.step(next - since);
                since = next;
                next += SCAN;
            }
            model.pass(at[i] - since);
            since = at[i];
            for (int k = 0; k < before.length; k++) {
                ohms[i][k] = (before[k] - model.trueVolts(k)) / (flowing - model.world().amps());
            }
        }
        model.step(next - since);
        return ohms;
    }

    private Night done() {
        return new Night(rig, gathered(), truths);
    }
}
