package rigwarden.rigfile;

import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;

/** Whether every place is watched, and well enough. */
final class PlaceChecks {

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;

    PlaceChecks(Page page, Sketch sketch) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
    }

    void check() {
        for (int cell = 1; cell <= rig.cells().series(); cell++) {
            cell(cell);
        }
        if (rig.inputs().stream().filter(input -> input.role() == Role.BUS_VOLTS).count() != 1) {
            page.refuse(RefusalKind.NO_TAP, "adc", "", "exactly one input with measures = \"bus\"",
                    "pre-charge and welded contacts are seen on the bus", "Wire one behind the contactor.");
        }
        one(Role.ROOM, "room", "over-temperature is judged over the room");
        one(Role.SHUNT_BODY, "shunt", "a shunt's resistance moves with its warmth");
        one(Role.CONTACTOR_BODY, "contactor", "a worn contact warms before it welds");
        rig.inputs().forEach(this::reach);
        rig.probes().forEach(this::period);
        islands();
        for (Channel channel : sketch.channels()) {
            if (channel.role() == Role.CELL_VOLTS) {
                uncertainty(channel);
            }
        }
    }

    private void cell(int cell) {
        long taps = rig.inputs().stream().filter(i -> i.cell() == cell).count();
        if (taps != 1) {
            page.refuse(RefusalKind.NO_TAP, "adc", taps + " taps for cell " + cell, "exactly one for each cell",
                    "a cell that cannot be seen cannot be guarded", "Wire one and describe it.");
        }
        if (probes(Role.BODY, cell) != 1) {
            page.refuse(RefusalKind.NO_BODY_PROBE, "probe", probes(Role.BODY, cell) + " body probes for cell " + cell,
                    "exactly one for each cell", "charging a cold or hot cell harms it", "Fit one and describe it.");
        }
        boolean positive = joint(cell, true) || cell < rig.cells().series() && probes(Role.BAR, cell) > 0;
        boolean negative = joint(cell, false) || cell > 1 && probes(Role.BAR, cell - 1) > 0;
        if (!positive || !negative) {
            page.refuse(RefusalKind.NO_STUD_PAIR, "probe",
                    "no probe on the " + (positive ? "negative" : "positive") + " stud of cell " + cell + " or on its bar",
                    "one on each stud, or one on the bar between two",
                    "a loose joint is the likeliest fire of a rig", "Fit one and describe it.");
        }
    }

    private boolean joint(int cell, boolean positive) {
        return rig.probes().stream()
                .anyMatch(p -> p.place() == Role.STUD && p.cell() == cell && p.positive() == positive);
    }

    /**
     * A pack is measured by taps, and the cells of one island follow each other. How high an island's ground stands is borne by its isolator
     * and not by its chip, which sees its own island only: the rating is in {@code hardware/parts.csv}, a file of a rig has no key for it.
     */
    private void islands() {
        for (VoltageInput input : rig.inputs()) {
            boolean alone = input.role() == Role.CELL_VOLTS && rig.cells().series() > 1;
            if (alone) {
                page.refuse(RefusalKind.TAP_IN_PACK, sketch.key(input, "measures"), "tap",
                        "in a pack every sense wire is a tap against its island's ground",
                        "Write measures = \"tap\" and the cell whose positive stud it is on.");
            }
        }
        for (Sketch.Adc adc : sketch.converters()) {
            List<Integer> cells = rig.inputs().stream()
                    .filter(i -> i.role() == Role.TAP_VOLTS && i.converter().equals(adc.converter()))
                    .map(VoltageInput::cell).sorted().toList();
            boolean gap = !cells.isEmpty() && cells.getLast() - cells.getFirst() != cells.size() - 1;
            if (gap) {
                page.refuse(RefusalKind.ISLAND_GAP, adc.key(), "taps of cells " + cells, "cells that follow each other",
                        "a cell's voltage is its tap less the tap below on the same island",
                        "Move the tap to the island of its neighbours.");
            }
        }
    }

    private long probes(Role place, int cell) {
        return rig.probes().stream().filter(p -> p.place() == place && p.cell() == cell).count();
    }

    private void one(Role place, String word, String why) {
        if (probes(place, 0) != 1) {
            page.refuse(RefusalKind.NO_ROOM_PROBE, "probe", probes(place, 0) + " with place = \"" + word + "\"",
                    "exactly one", why, "Fit one and describe it.");
        }
    }

    private void reach(VoltageInput input) {
        double needed = TapKeys.neededVolts(input, rig.inputs(), rig.cells().series());
        double reach = input.reachVolts();
        if (reach < needed) {
            page.refuse(RefusalKind.SUPPLY_TOO_LOW, sketch.key(input, "divider"),
                    page.text(sketch.key(input, "divider")) + " at " + Figures.of(input.supplyVolts(), "V")
                            + " of supply, which shows at most " + Figures.of(reach, "V"),
                    "at least " + Figures.of(needed, "V"), "an overcharge must be seen as one",
                    "Feed the ADC from 5 V, or divide the voltage further.");
        }
    }

    private void period(Probe probe) {
        long slowest = 2 * rig.scanNanos();
        if (probe.periodNanos() > slowest && !probe.place().carried()) {
            page.refuse(RefusalKind.PROBE_SLOW, sketch.key(probe, "period_ms"),
                    Figures.range(rig.scanNanos() * 1e-6, slowest * 1e-6, "ms"),
                    "one false reading must be gone before a rule has waited long enough", "Read it more often.");
        }
    }

    private String tapKey(Channel cell) {
        return rig.inputs().stream().filter(i -> i.cell() == cell.cell()).findFirst()
                .map(i -> sketch.keys().get(i.name())).orElse("adc");
    }

    /** Judged at the highest voltage that a programme may use. */
    private void uncertainty(Channel tap) {
        double u = tap.uncertainty(Envelope.CEILING_V);
        if (u <= Envelope.TAP_U_NAMED_V) {
            return;
        }
        boolean poor = u > Envelope.TAP_U_REFUSED_V;
        double limit = poor ? Envelope.TAP_U_REFUSED_V : Envelope.TAP_U_NAMED_V;
        page.refuse(poor ? RefusalKind.TAP_POOR : RefusalKind.TAP_NAMED,
                sketch.keys().getOrDefault(tap.name(), tapKey(tap)) + ".divider_percent",
                "U = " + Figures.of(u * 1e3, "mV") + " at " + Figures.of(Envelope.CEILING_V, "V"),
                "up to " + Figures.of(limit * 1e3, "mV") + (poor ? " unattended" : " without being named"),
                "limits hold for the true value, so that U makes the envelope smaller", "Calibrate this tap.");
    }
}
