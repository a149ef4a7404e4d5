package rigwarden.rigfile;

import java.util.HashSet;
import java.util.List;
import rigwarden.rig.BusSide;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Guards;
import rigwarden.rig.Protection;
import rigwarden.rig.Rig;
import rigwarden.warden.Sides;

/** Whether what must work with the computer dead does, and whether each way can be stopped twice. */
final class GuardChecks {
    private static final List<String> STOPS = List.of("contactor", "relay");
    private static final double HOLD_SHORTEST_S = 0.6;
    private static final double HOLD_LONGEST_S = 1.0;
    private static final double HIGHEST_V = 3.75;
    private static final double LOWEST_V = 2.30;
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
        rig.devices().forEach(this::stops);
        heartbeat(guards);
        loop(guards);
        busSide(rig.busSide());
        devices();
        firstLayer(guards);
        rig.protection().ifPresent(this::protection);
    }

    /** What limits a cell with the computer dead: protection, or window, or limits of every instrument. */
    private void firstLayer(Guards guards) {
        boolean limits = rig.devices().stream().allMatch(device -> switch (device) {
            case Device.Programmed p -> p.limitReadBack();
            case Device.PlainCharger _, Device.Inverter _ -> false;
        });
        if (rig.protection().isEmpty() && !guards.windowFitted() && !limits) {
            page.refuse(RefusalKind.NO_WINDOW, "guards", "no protection, no window and no limits that are read back",
                    "the battery's own protection, a window per cell, or limits of source and sink that are read back",
                    "a dead computer must not leave a cell without any limit", "Fit a window for unattended nights.");
        }
    }

    /** As delivered many open at 3.75 V and 2.2 V: common practice (no source). That is too late to be the last layer. */
    private void protection(Protection protection) {
        double high = protection.highVolts() + protection.toleranceVolts();
        if (high > HIGHEST_V) {
            edge("high_v", high, "at most " + Figures.of(HIGHEST_V - protection.toleranceVolts(), "V"));
        }
        double low = protection.lowVolts() - protection.toleranceVolts();
        if (low < LOWEST_V) {
            edge("low_v", low, "at least " + Figures.of(LOWEST_V + protection.toleranceVolts(), "V"));
        }
    }

    private void edge(String key, double reached, String allowed) {
        page.refuse(RefusalKind.PROTECTION_LATE, "protection." + key,
                page.text("protection." + key) + " V, in truth up to " + Figures.of(reached, "V"), allowed,
                "with the computer dead it is the only limit of a cell", "Tighten it, prove it, then write it here.");
    }

    private void stops(Device device) {
        List<String> stops = device.stops();
        String key = sketch.key(device, "stops");
        if (stops.size() == 1) {
            page.refuse(RefusalKind.ONE_STOP, key, stops.getFirst(), "two elements, each enough alone",
                    "one of them may be welded", "Add a second element, or stand beside it.");
        } else if (new HashSet<>(stops).size() < 2) {
            page.refuse(RefusalKind.SAME_STOP, key, String.join(", ", stops), "two different elements",
                    "both would fail together", "Name the second element.");
        }
        for (String stop : stops) {
            if (!STOPS.contains(stop)) {
                page.refuse(RefusalKind.UNKNOWN_WORD, key, stop, String.join(", ", STOPS),
                        "only what can be opened alone, and is in a proof, counts as a way to stop", Nearest.question(stop, STOPS));
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

    private void devices() {
        double most = rig.cells().series() * Envelope.CEILING_V;
        double least = rig.cells().series() * Envelope.CUT_OFF_V;
        for (Device device : rig.devices()) {
            switch (device) {
                case Device.Programmed p when p.charges() -> high(p, "max_v", most);
                case Device.PlainCharger c -> high(c, "volts", most);
                case Device.Programmed p -> early(p, least);
                case Device.Inverter i -> restart(i);
            }
        }
    }

    private void high(Device source, String key, double most) {
        if (source.highestVolts() > most) {
            page.refuse(RefusalKind.SOURCE_LIMIT_HIGH, sketch.key(source, key), Figures.of(source.highestVolts(), "V"),
                    "at most " + Figures.of(most, "V"), "series × 3.65 V is what the cells may get",
                    "Set the source's own limit, then write it here.");
        }
    }

    private void early(Device.Programmed sink, double least) {
        if (sink.minVolts() > least) {
            page.refuse(RefusalKind.SINK_QUITS_EARLY, sketch.key(sink, "min_v"), Figures.of(sink.minVolts(), "V"),
                    "at most " + Figures.of(least, "V"), "a capacity test ends at 2.50 V per cell",
                    "Use a sink that works lower.");
        }
    }

    private void restart(Device.Inverter inverter) {
        if (inverter.restartVolts() <= inverter.quitVolts()) {
            page.refuse(RefusalKind.RESTART_LOW, sketch.key(inverter, "restart_v"),
                    "more than " + Figures.of(inverter.quitVolts(), "V"),
                    "an inverter that quits starts again only when the cells have rebounded", "Look at its settings.");
        }
    }
}
