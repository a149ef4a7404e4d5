package rigwarden.circuit;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import rigwarden.rig.BusSide;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;

/** What each part of {@code hardware/parts.csv} must bear, computed from a rig: by part and property, in the table's units. */
final class Needs {
    /** Lowest AC resistance of a cell in both reference rigs, ohm. */
    private static final double CELL_OHMS = 0.0002;
    private static final double FULL_CELL = 3.4;
    private static final double CEILING = 3.65;
    /** An overcurrent trips at half as much again. */
    private static final double TRIPS = 1.5;
    /** The second element breaks where the first sticks: a tenth over the order trips after three seconds. */
    private static final double SECOND = 1.1;
    /** The coils' supply a tenth too high, V, and a coil with a tenth less copper and 30 K colder. */
    private static final double COILS = 24 * 1.1;
    private static final double COPPER = 0.79;

    private Needs() {}

    static Map<String, ToDoubleFunction<Rig>> all() {
        Map<String, ToDoubleFunction<Rig>> needs = new LinkedHashMap<>();
        needs.put("fuse/continuous", rig -> Formulas.fuseAmps(amps(rig)));
        needs.put("fuse/breaking capacity", _ -> Formulas.shortCircuitAmps(FULL_CELL, CELL_OHMS));
        needs.put("fuse/d.c. voltage", Needs::volts);
        needs.put("power cable/ampacity", rig -> Formulas.fuseAmps(amps(rig)));
        needs.put("power cable/area", _ -> Formulas.cableSquareMillimetres(Formulas.shortCircuitAmps(FULL_CELL, CELL_OHMS), 0.01, Formulas.PVC));
        needs.put("bus bar/area", rig -> amps(rig) / 2);
        needs.put("shunt/nominal", rig -> amps(rig) * 1.5);
        needs.put("shunt/heat", rig -> Formulas.watts(amps(rig), rig.shunt().ohms()));
        needs.put("K1 contactor/continuous", Needs::amps);
        needs.put("K1 contactor/breaks", rig -> amps(rig) * TRIPS);
        needs.put("K1 contactor/d.c. voltage", Needs::volts);
        needs.put("second element, source/breaks", rig -> programmed(rig, true) * SECOND);
        needs.put("second element, sink/breaks", rig -> programmed(rig, false) * SECOND);
        needs.put("pre-charge resistor/pulse", rig -> Formulas.prechargeJoules(rig.busSide().farads(), volts(rig)));
        needs.put("Kp pre-charge relay/makes", rig -> volts(rig) / rig.busSide().prechargeOhms());
        needs.put("bleed resistor/heat", rig -> Math.pow(volts(rig), 2) / rig.busSide().bleedOhms());
        needs.put("bleed resistor/empties within", rig -> bled(rig.busSide()));
        needs.put("coil zener/pulse", _ -> 1.8 * Math.pow(COILS / (48 * COPPER), 2) / 2 * 1000);
        needs.put("coil transistor/voltage", _ -> COILS + 56.7);
        needs.put("loop contact/current", _ -> coils());
        needs.put("24 V supply/current", _ -> coils() + 3 * 12 / (360 * COPPER));
        needs.put("island isolator/working voltage", rig -> rig.cells().series() > 1 ? volts(rig) : 0);
        needs.put("sense fuse/breaking capacity", rig -> volts(rig) / (2 * Formulas.copperOhms(0.3, 0.25, 20)));
        needs.put("sense fuse/d.c. voltage", Needs::volts);
        needs.put("sounder battery/charge", _ -> 9.0 / 300 * 12);
        return needs;
    }

    private static double amps(Rig rig) {
        return Math.max(rig.chargeCeilingAmps(), rig.dischargeCeilingAmps());
    }

    private static double volts(Rig rig) {
        return rig.cells().series() * CEILING;
    }

    private static double programmed(Rig rig, boolean charges) {
        return rig.devices(charges).stream().filter(Device.Programmed.class::isInstance).mapToDouble(rig::ceilingAmps).max().orElse(0);
    }

    private static double bled(BusSide side) {
        return Formulas.bleedSeconds(side.bleedOhms(), side.farads());
    }

    /** K1, Kp, K2 and KL. */
    private static double coils() {
        return (COILS / 48 + 2 * COILS / 160 + COILS / 576) / COPPER;
    }
}
