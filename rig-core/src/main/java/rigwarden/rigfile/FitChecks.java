package rigwarden.rigfile;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import rigwarden.rig.Calibration;
import rigwarden.rig.Converter;
import rigwarden.rig.Envelope;
import rigwarden.rig.PathPart;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;
import rigwarden.rig.VoltageInput;

/** Whether values that are each allowed by themselves fit each other. */
final class FitChecks {
    private static final double PEAK_A = 30;
    private static final double MISSED_BEATS = 3;
    private static final double CONTACT_S = 0.05;
    private static final double PROTECTION_S = 10;
    private static final double LAG_S = 20;
    private static final double PROBE_U_K = 3;
    private static final double STEP_V = 0.002;
    private static final double GAIN_U = 20e-6;
    private static final double OFFSET_U_V = 50e-6;
    private static final double SHUNT_LEAST_V = 0.025;
    private static final double SHUNT_MOST_V = 0.16;
    /** AC resistance times size of a large LFP cell, Ω·Ah: common practice (no source), with a wide margin. */
    private static final double OHM_AH_LEAST = 0.004;
    private static final double OHM_AH_MOST = 0.3;
    private static final double NIGHT_H = 36;

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;

    FitChecks(Page page, Sketch sketch) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
    }

    void check() {
        busSide();
        guards();
        rig.probes().forEach(this::probe);
        places();
        rig.inputs().forEach(this::input);
        islands();
        path();
        cells();
    }

    private void busSide() {
        double volts = rig.cells().series() * Envelope.HIGH_TRIP_V;
        double bleed = volts * volts / rig.busSide().bleedOhms();
        if (bleed > sketch.bleedWatts()) {
            page.refuse(RefusalKind.BLEED_HOT, "bus_side.bleed_watts", Figures.of(sketch.bleedWatts(), "W"),
                    "at least " + Figures.of(bleed, "W"), "that is its heat at " + Figures.of(volts, "V"),
                    "Fit a larger one, or more ohms.");
        }
        double filling = rig.busSide().farads() * volts * volts / 2;
        if (filling > sketch.prechargeJoules()) {
            page.refuse(RefusalKind.PRECHARGE_HOT, "bus_side.precharge_joules", Figures.of(sketch.prechargeJoules(), "J"),
                    "at least " + Figures.of(filling, "J"), "so much heat is in one filling of the bus",
                    "Fit a resistor for pulses.");
        }
        double peak = volts / rig.busSide().prechargeOhms();
        if (peak > PEAK_A) {
            page.refuse(RefusalKind.PRECHARGE_PEAK, "bus_side.precharge_ohms", "at least "
                    + Figures.of(volts / PEAK_A, "ohm"), "its relay would close onto " + Figures.of(peak, "A"),
                    "Choose a higher resistance.");
        }
    }

    private void guards() {
        if (rig.guards().heartbeatShortest() < MISSED_BEATS * rig.scanNanos() * 1e-9) {
            page.refuse(RefusalKind.HOLD_AND_SCAN, "scan_ms", "a scan of at most a third of heartbeat_shortest_s",
                    "one late beat would trip the rig", "Scan faster.");
        }
        if (rig.guards().contactLagSeconds() > CONTACT_S) {
            page.refuse(RefusalKind.CONTACT_SLOW, "guards.contact_lag_s", "up to " + Figures.of(CONTACT_S, "s"),
                    "a coil without the right suppression opens slowly and burns its contacts",
                    "Look at the diode across its coil.");
        }
        Trips trips = rig.guards().trips();
        double top = rig.cells().ceilingVolts() + TapLimit.uncertainty(rig, rig.cells().ceilingVolts());
        if (trips.cellHighVolts() <= top) {
            page.refuse(RefusalKind.TRIP_INSIDE_PROGRAMME, "guards.cell_high_trip_v", "above " + Figures.of(top, "V"),
                    "so high a cell may stand at the rig's ceiling", "Lower cell.ceiling_v, or move the trip out.");
        }
        double bottom = rig.cells().cutOffVolts() - TapLimit.uncertainty(rig, rig.cells().cutOffVolts());
        if (trips.cellLowVolts() >= bottom) {
            page.refuse(RefusalKind.TRIP_INSIDE_PROGRAMME, "guards.cell_low_trip_v", "below " + Figures.of(bottom, "V"),
                    "so low a cell may stand at the rig's cut-off", "Raise cell.cut_off_v, or move the trip out.");
        }
        Set<String> seen = new HashSet<>();
        for (String contact : rig.guards().loopContacts()) {
            if (!seen.add(contact)) {
                page.refuse(RefusalKind.LOOP_TWICE, "guards.loop_contacts", contact, "each contact once",
                        "two of a kind need two names in your drawing, and one here", "Remove one.");
            }
        }
        rig.protection().filter(p -> p.delaySeconds() > PROTECTION_S).ifPresent(_ ->
                page.refuse(RefusalKind.PROTECTION_SLOW, "protection.delay_s", "at most " + Figures.of(PROTECTION_S, "s"),
                        "a cell at its edge moves millivolts a second", "Shorten it, and prove it again."));
    }

    /** What a rule reads must be quick and good; the loose probe is read by none. */
    private void probe(Probe probe) {
        if (probe.place().carried()) {
            return;
        }
        if (probe.lagSeconds() > LAG_S) {
            page.refuse(RefusalKind.PROBE_LAGS, sketch.key(probe, "lag_s"), "at most " + Figures.of(LAG_S, "s"),
                    "what the bead has not felt cannot trip", "Fix the bead better.");
        }
        if (probe.uncertaintyKelvin() > PROBE_U_K) {
            page.refuse(RefusalKind.PROBE_POOR, sketch.key(probe, "uncertainty_k"), "at most " + Figures.of(PROBE_U_K, "K"),
                    "5 K over its likes must still be seen", "Calibrate it, or use better wire.");
        }
        if (probe.place() == Role.BAR && probe.cell() >= rig.cells().series()) {
            page.refuse(RefusalKind.NO_SUCH_BAR, sketch.key(probe, "cell"),
                    "1…" + (rig.cells().series() - 1), "a bar lies between a cell and the next one",
                    "On the last stud write place = \"stud\".");
        }
    }

    private void places() {
        Map<String, String> taken = new HashMap<>();
        for (Probe probe : rig.probes()) {
            String place = probe.place() + " " + probe.cell() + " " + probe.positive();
            String first = taken.putIfAbsent(place, probe.name());
            boolean many = probe.place() == Role.STUD || probe.place() == Role.BAR;
            if (first != null && probe.place().carried()) {
                page.refuse(RefusalKind.LOOSE_TWICE, sketch.key(probe, "place"), first + " and " + probe.name(), "one at most",
                        "a person carries one probe, and says of one where it is", "Fix the other somewhere, or leave it out.");
            }
            if (first != null && many) {
                page.refuse(RefusalKind.PLACE_TWICE, sketch.key(probe, "place"), first + "'s place", "a place of its own",
                        "one of the two is not where you think", "Find out with a warm finger.");
            }
        }
    }

    private void input(VoltageInput input) {
        boolean cell = input.role() != Role.BUS_VOLTS;
        double step = input.converter().voltsPerCode() * input.divider();
        if (cell && step > STEP_V) {
            page.refuse(RefusalKind.DIVIDER_COARSE, sketch.key(input, "divider"), "at most "
                    + Figures.of(STEP_V / input.converter().voltsPerCode()), "one step of the reading would be "
                    + Figures.of(step * 1e3, "mV"), "Divide no further than the island needs.");
        }
        Calibration calibration = input.calibration();
        if (calibration.known() && (calibration.gainU() < GAIN_U || calibration.offsetU() < OFFSET_U_V)) {
            page.refuse(RefusalKind.CALIBRATION_TOO_GOOD, sketch.key(input, "calibration"), "a gain_u of "
                    + Figures.of(calibration.gainU()) + " and an offset_u_v of " + Figures.of(calibration.offsetU(), "V"),
                    "at least " + Figures.of(GAIN_U) + " and " + Figures.of(OFFSET_U_V, "V"),
                    "the chip drifts by more from day to day", "Use what the reference meter's sheet says.");
        }
    }

    private void islands() {
        Map<String, String> tapped = new HashMap<>();
        for (Sketch.Adc adc : sketch.converters()) {
            int lowest = rig.inputs().stream()
                    .filter(i -> i.role() == Role.TAP_VOLTS && i.converter().equals(adc.converter()))
                    .mapToInt(VoltageInput::cell).min().orElse(0);
            if (lowest == 0) {
                continue;
            }
            String first = tapped.putIfAbsent(adc.converter().wire(), adc.key());
            if (first != null) {
                page.refuse(RefusalKind.ISLANDS_JOINED, busKey(adc), adc.converter().wire(), "an isolated bus of its own",
                        first + " is on it, and one bus has one ground", "Give each island its own isolator and supply.");
            }
            if (lowest > 1 && adc.converter().wire().equals("I2C bus " + rig.shunt().bus())) {
                page.refuse(RefusalKind.ISLAND_ON_GROUND, busKey(adc), adc.converter().wire(), "an isolated bus",
                        "its ground is the stud of a cell, the shunt's is B−: this is a short circuit",
                        "Move the island to an isolated bus.");
            }
        }
    }

    private static String busKey(Sketch.Adc adc) {
        return adc.key() + switch (adc.converter()) {
            case Converter.Ads1115 _ -> ".bus";
            case Converter.Ads1220 _ -> ".spi_bus";
        };
    }

    private void path() {
        for (PathPart part : rig.path()) {
            double volts = part.ratedAmps() * rig.shunt().ohms();
            if (part.kind() == PathPart.Kind.SHUNT && (volts < SHUNT_LEAST_V || volts > SHUNT_MOST_V)) {
                page.refuse(RefusalKind.SHUNT_MISMATCH, sketch.keys().get(part.name()) + ".rated_a",
                        Figures.of(volts * 1e3, "mV") + " at " + Figures.of(part.ratedAmps(), "A"),
                        Figures.range(SHUNT_LEAST_V * 1e3, SHUNT_MOST_V * 1e3, "mV"),
                        "shunts are made for about 50 to 100 mV at their rating", "Read both figures off the shunt again.");
            }
            boolean cable = part.kind() == PathPart.Kind.CABLE && !part.common();
            if (cable && part.ratedAmps() < fuseAmps("") && fuseAmps(part.device()) > part.ratedAmps()) {
                page.refuse(RefusalKind.BRANCH_UNFUSED, sketch.keys().get(part.name()) + ".rated_a",
                        Figures.of(part.ratedAmps(), "A"), "a fuse of at most that in the same branch",
                        "the common fuse lets it burn", "Fit one with device = \"" + part.device() + "\".");
            }
        }
    }

    private double fuseAmps(String device) {
        return rig.path().stream().filter(p -> p.kind() == PathPart.Kind.FUSE && p.device().equals(device))
                .mapToDouble(PathPart::ratedAmps).min().orElse(Double.MAX_VALUE);
    }

    private void cells() {
        double each = rig.cells().ratedAmpHours() / rig.cells().parallel();
        double product = sketch.cellOhms() * each;
        if (product < OHM_AH_LEAST || product > OHM_AH_MOST) {
            page.refuse(RefusalKind.CELL_OHMS_ODD, "cell.ohms", Figures.of(sketch.cellOhms() * 1e3, "mΩ") + " for "
                    + Figures.of(each, "Ah"), Figures.range(OHM_AH_LEAST / each * 1e3, OHM_AH_MOST / each * 1e3, "mΩ"),
                    "cells of this size have no other", "Is it in ohms?");
        }
        double later = rig.rehearsed().roomCelsius() + rig.rehearsed().roomKelvinPerHour() * NIGHT_H;
        if (later < Envelope.DISCHARGING_ENTRY_LOW_C || later > Envelope.DISCHARGING_ENTRY_HIGH_C) {
            page.refuse(RefusalKind.ROOM_LATER, "rehearsal.room_drift_k_per_h", Figures.of(later, "°C") + " after a day and a half",
                    Figures.range(Envelope.DISCHARGING_ENTRY_LOW_C, Envelope.DISCHARGING_ENTRY_HIGH_C, "°C"),
                    "no step could begin then", "Choose a smaller drift.");
        }
    }
}
