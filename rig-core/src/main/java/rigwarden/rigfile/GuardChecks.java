package rigwarden.rigfile;

import java.util.HashSet;
import java.util.List;
import rigwarden.rig.BusSide;
import rigwarden.rig.Envelope;
import rigwarden.rig.Guards;
import rigwarden.rig.Rig;
import rigwarden.warden.Sides;

/** Whether what must work with the computer dead does, and whether each way can be stopped twice. */
final class GuardChecks {
    private static final double HOLD_SHORTEST_S = 0.6;
    private static final double HOLD_LONGEST_S = 1.0;
    private static final double PRECHARGE_S = 5;
    private static final double TWENTIETH = Math.log(20);

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;

    GuardChecks(Page page, Sketch sketch) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
    }

    void check() {
        Guards guards = rig.guards();
        stops("charge_stops", guards.chargeStops());
        stops("discharge_stops", guards.dischargeStops());
        heartbeat(guards);
        loop(guards);
        busSide(rig.busSide());
        instruments();
        if (!guards.windowFitted() && !sketch.limitsReadBack()) {
            page.refuse(RefusalKind.NO_WINDOW, "guards", "no window and limit_read_back = false",
                    "a window per cell, or limits of source and sink that are read back",
                    "a dead computer must not leave a cell without any limit", "Fit a window for unattended nights.");
        }
    }

    private void stops(String key, List<String> stops) {
        if (stops.size() == 1) {
            page.refuse(RefusalKind.ONE_STOP, "guards." + key, stops.getFirst(), "two elements, each enough alone",
                    "one of them may be welded", "Add a second element, or stand beside it.");
        } else if (new HashSet<>(stops).size() < 2) {
            page.refuse(RefusalKind.SAME_STOP, "guards." + key, String.join(", ", stops), "two different elements",
                    "both would fail together", "Name the second element.");
        }
        for (String stop : stops) {
            boolean inPath = rig.path().stream().anyMatch(part -> part.name().equals(stop));
            if (stop.endsWith("_relay") && !inPath) {
                page.refuse(RefusalKind.UNKNOWN_WORD, "guards." + key, stop, "the name of a part of the path",
                        "a stop that is not in the path stops nothing", "Describe it in a [[path]] table.");
            }
        }
    }

    private void heartbeat(Guards guards) {
        boolean inverted = guards.heartbeatShortest() > guards.heartbeatLongest();
        if (guards.heartbeatShortest() < HOLD_SHORTEST_S || inverted) {
            hold("guards.heartbeat_shortest_s");
        }
        if (guards.heartbeatLongest() > HOLD_LONGEST_S) {
            hold("guards.heartbeat_longest_s");
        }
    }

    private void hold(String key) {
        page.refuse(RefusalKind.HEARTBEAT_HOLD, key, page.text(key) + " s",
                Figures.range(HOLD_SHORTEST_S, HOLD_LONGEST_S, "s") + ", shortest before longest",
                "a few missed beats are tolerated and a dead computer must let go soon",
                "Change the stage's capacitor.");
    }

    private void loop(Guards guards) {
        if (!guards.latching()) {
            page.refuse(RefusalKind.LOOP_NOT_LATCHING, "guards.latching", "true",
                    "a cooled bimetal must not close the loop again", "Fit a latching relay.");
        }
        for (String contact : List.of("emergency_stop", "thermal_cutout")) {
            if (!guards.loopContacts().contains(contact)) {
                page.refuse(RefusalKind.LOOP_CONTACT_MISSING, "guards.loop_contacts",
                        "a loop without " + contact, "a loop with emergency_stop and thermal_cutout",
                        "they must work with the computer dead", "Wire " + contact + " into the loop.");
            }
        }
    }

    private void busSide(BusSide side) {
        double goal = side.bleedOhms() / (side.bleedOhms() + side.prechargeOhms());
        double tau = side.farads() * side.prechargeOhms() * goal;
        double missing = goal - (1 - Sides.SHARE);
        double seconds = missing > 0 ? tau * Math.log(goal / missing) : Double.POSITIVE_INFINITY;
        if (seconds > PRECHARGE_S) {
            page.refuse(RefusalKind.PRECHARGE_SLOW, "bus_side.precharge_ohms",
                    Figures.of(side.prechargeOhms(), "ohm") + (missing > 0
                            ? ", which needs " + Figures.of(seconds, "s")
                            : ", which with the bleed never lifts the bus above " + Figures.of(100 * goal, "%")),
                    "a resistor that brings the bus within 5 % of the pack in 5 s",
                    "the contactor closes only onto a bus that is nearly at the pack's voltage",
                    "Choose a lower pre-charge or a higher bleed resistor.");
        }
        double decay = side.bleedOhms() * side.farads() * TWENTIETH;
        if (side.decaySeconds() < decay) {
            page.refuse(RefusalKind.DECAY_SHORT, "bus_side.decay_s", Figures.of(side.decaySeconds(), "s"),
                    "at least " + Figures.of(decay, "s"), "bleed × farads × ln 20 pass before the bus is empty",
                    "Measure it again, or choose a lower bleed resistor.");
        }
    }

    private void instruments() {
        double most = rig.cells().series() * Envelope.CEILING_V;
        if (rig.source().maxVolts() > most) {
            page.refuse(RefusalKind.SOURCE_LIMIT_HIGH, "source.max_v", Figures.of(rig.source().maxVolts(), "V"),
                    "at most " + Figures.of(most, "V"), "series × 3.65 V is what the cells may get",
                    "Set the source's own limit, then write it here.");
        }
        double least = rig.cells().series() * Envelope.CUT_OFF_V;
        if (rig.sink().minVolts() > least) {
            page.refuse(RefusalKind.SINK_QUITS_EARLY, "sink.min_v", Figures.of(rig.sink().minVolts(), "V"),
                    "at most " + Figures.of(least, "V"), "a capacity test ends at 2.50 V per cell",
                    "Use a sink that works lower.");
        }
    }
}
