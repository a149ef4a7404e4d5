package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.List;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** Reads the steps of a programme, each against the rig. */
final class StepKeys {
    private static final List<String> KINDS = List.of("charge", "rest", "discharge", "heat_run", "pulse", "balance", "recover", "prove_protection", "park", "repeat");
    private static final long MINUTE_NANOS = 60_000_000_000L;
    private static final int SHORTEST_REST_MIN = 30;
    private static final int DEEPEST = 3;
    private static final double PARK_LEAST = 0.3;
    private static final double PARK_MOST = 0.5;
    private static final double ROUNDING = 1 + 1e-9;
    private static final double LEAST_RATE_C = 0.001;
    private static final double MOST_RATE_C = 5;
    private static final double LEAST_A = 0.01;
    private static final double MOST_A = 2000;
    private static final String CURRENT = "a step needs exactly one current";

    private final Page page;
    private final Rig rig;
    private final GentleKeys gentle;

    StepKeys(Page page, Rig rig) {
        this.page = page;
        this.rig = rig;
        gentle = new GentleKeys(page, rig, this);
    }

    List<Step> steps(Keys root) {
        List<Step> steps = new ArrayList<>();
        for (Keys keys : root.tables("step", RefusalKind.NO_STEPS, "a programme is its steps")) {
            add(keys, steps, 1);
        }
        if (steps.isEmpty() && page.sound()) {
            page.refuse(RefusalKind.NO_STEPS, "step", "an empty list", "at least one [[step]]",
                    "a programme is its steps", "Add one.");
        }
        return List.copyOf(steps);
    }

    /** A repeat is its steps as often as it says: plain nesting, and no jumps. */
    private void add(Keys keys, List<Step> steps, int depth) {
        String kind = keys.word("kind", KINDS, "a step is one of these");
        if (!kind.equals("repeat")) {
            steps.add(step(keys, kind));
            keys.noOthers();
            return;
        }
        int times = keys.whole("times", "", 1, 100, "a repeat is its steps as often as it says");
        List<Step> inner = new ArrayList<>();
        for (Keys one : keys.tables("step", RefusalKind.NO_STEPS, "a repeat is its steps")) {
            if (depth >= DEEPEST) {
                page.refuse(RefusalKind.REPEAT_DEEP, one.full("kind"), "at most " + DEEPEST + " repeats in each other",
                        "nobody can tell how long such a night takes", "Write the steps out.");
            } else {
                add(one, inner, depth + 1);
            }
        }
        keys.noOthers();
        for (int i = 0; i < times; i++) {
            steps.addAll(inner);
        }
    }

    private Step step(Keys keys, String kind) {
        return switch (kind) {
            case "rest" -> rest(keys);
            case "discharge" -> discharge(keys);
            case "heat_run" -> heatRun(keys);
            case "park" -> park(keys);
            case "pulse" -> gentle.pulse(keys);
            case "balance" -> gentle.balance(keys);
            case "recover" -> gentle.recover(keys);
            case "prove_protection" -> gentle.prove(keys);
            case String _ -> charge(keys);
        };
    }

    private Step discharge(Keys keys) {
        int through = through(keys, false);
        return new Step.Discharge(through, within(keys, through), cutOff(keys));
    }

    private Step heatRun(Keys keys) {
        int through = through(keys, false);
        return new Step.HeatRun(through, within(keys, through), cutOff(keys),
                keys.whole("at_most_min", RefusalKind.HEAT_RUN_LONG, "min", 1, 1440, "heat needs an end")
                        * MINUTE_NANOS);
    }

    private Step park(Keys keys) {
        int through = through(keys, true);
        return new Step.Park(through, charging(keys, through), share(keys), ceiling(keys));
    }

    /** Place of the step's device; it need not be named where the rig has only one. */
    int through(Keys keys, boolean charging) {
        List<String> names = rig.devices(charging).stream().map(Device::name).toList();
        if (!keys.has("with")) {
            if (names.size() != 1 && keys.good("kind")) {
                page.refuse(RefusalKind.WHICH_DEVICE, keys.full("with"), Refusal.NOTHING, String.join(", ", names),
                        "the rig has more than one", "Add with = \"" + names.getFirst() + "\" or another.");
            }
            return place(names.getFirst());
        }
        return place(keys.word("with", names, "the rig has these"));
    }

    int place(String name) {
        for (int i = 0; i < rig.devices().size(); i++) {
            if (rig.devices().get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("the rig has no " + name);
    }

    private Step charge(Keys keys) {
        int through = through(keys, true);
        double amps = charging(keys, through);
        double ceiling = ceiling(keys);
        double taper = current(keys, "taper_c", "taper_amps");
        String taperKey = keys.has("taper_c") ? "taper_c" : "taper_amps";
        boolean comparable = amps > 0 && keys.good(taperKey) && keys.good(keys.has("rate_c") ? "rate_c" : "amps");
        if ((comparable || rig.devices().get(through).switched()) && taper >= amps) {
            page.refuse(RefusalKind.TAPER_NOT_BELOW, keys.full(taperKey),
                    Figures.of(taper, "A"), "less than " + Figures.of(amps, "A"),
                    "the current falls from the charge current to it", "Choose a smaller taper.");
        }
        return new Step.Charge(through, amps, ceiling, taper);
    }

    private Step rest(Keys keys) {
        String why = "a cell needs time until its voltage says something";
        int atLeast = keys.whole("at_least_min", "min", 0, 1440, why);
        int atMost = keys.whole("at_most_min", "min", 0, 1440, why);
        if (atLeast < SHORTEST_REST_MIN && keys.good("at_least_min")) {
            page.refuse(RefusalKind.REST_SHORT, keys.full("at_least_min"), "at least " + SHORTEST_REST_MIN + " min",
                    why, "Rest longer.");
        } else if (atMost < atLeast && keys.good("at_most_min")) {
            page.refuse(RefusalKind.REST_SHORT, keys.full("at_most_min"), "at least at_least_min", why, "Rest longer.");
        }
        return new Step.Rest(atLeast * MINUTE_NANOS, atMost * MINUTE_NANOS);
    }

    private double share(Keys keys) {
        String why = "cells keep best between 30 and 50 %";
        double share = keys.number("share", "", 0, 1, why);
        if (keys.good("share") && (share < PARK_LEAST || share > PARK_MOST)) {
            page.refuse(RefusalKind.PARK_SHARE, keys.full("share"), Figures.range(PARK_LEAST, PARK_MOST, ""), why, "");
        }
        return share;
    }

    double ceiling(Keys keys) {
        double volts = keys.number("ceiling_v", "V", 3.0, 5.0, "the highest cell is held at it");
        double u = uncertainty(volts);
        double most = Math.min(Envelope.CEILING_V, rig.cells().ceilingVolts());
        if (volts + u > most) {
            page.refuse(RefusalKind.CEILING_HIGH, keys.full("ceiling_v"), "at most " + Figures.of(most - u, "V"),
                    "with the tap's U = " + Figures.of(u * 1e3, "mV") + " the true voltage must not pass "
                            + Figures.of(most, "V"), "");
        }
        return volts;
    }

    double uncertainty(double volts) {
        double u = 0;
        for (Channel tap : rig.channels(Role.CELL_VOLTS)) {
            u = Math.max(u, tap.uncertainty(volts));
        }
        return u;
    }

    private double cutOff(Keys keys) {
        double volts = keys.number("cut_off_v", "V", 1.0, 3.4, "the discharge ends at it");
        double least = Math.max(Envelope.CUT_OFF_V, rig.cells().cutOffVolts());
        if (volts < least && keys.good("cut_off_v")) {
            page.refuse(RefusalKind.CUT_OFF_LOW, keys.full("cut_off_v"), "at least " + Figures.of(least, "V"),
                    "below it a cell may be harmed", "");
        }
        return volts;
    }

    double charging(Keys keys, int through) {
        double amps = ordered(keys, through);
        double most = Envelope.CHARGE_C * rig.cells().ratedAmpHours();
        if (amps > most * ROUNDING) {
            page.refuse(RefusalKind.CHARGE_FAST, rateKey(keys), Figures.of(amps, "A"),
                    "at most " + Figures.of(Envelope.CHARGE_C, "1/h") + ", here " + Figures.of(most, "A"),
                    "the envelope lets no cell be charged faster", "");
            return amps;
        }
        governed(keys, amps, through);
        return amps;
    }

    double within(Keys keys, int through) {
        double amps = ordered(keys, through);
        governed(keys, amps, through);
        return amps;
    }

    /** A programmable device is told a current; a switched one gives or takes what it does, and no key may say otherwise. */
    private double ordered(Keys keys, int through) {
        Device device = rig.devices().get(through);
        if (!device.switched()) {
            return current(keys, "rate_c", "amps");
        }
        boolean asRate = keys.has("rate_c");
        boolean asAmps = keys.has("amps");
        if (asRate || asAmps) {
            page.refuse(RefusalKind.NO_SET_POINT, rateKey(keys), "no current",
                    device.name() + " takes no set point: it does as it likes", "Remove the key.");
        }
        return device.maxAmps();
    }

    private void governed(Keys keys, double amps, int through) {
        Governing governing = Governing.of(rig, rig.devices().get(through));
        if (amps > governing.amps() * ROUNDING) {
            page.refuse(RefusalKind.OVER_WEAKEST, rateKey(keys), Figures.of(amps, "A"),
                    "at most " + Figures.of(governing.amps(), "A"),
                    "that is what " + governing.part() + " may carry for hours",
                    rig.devices().get(through).switched() ? "Use a smaller device." : "Lower the rate.");
        }
    }

    static String rateKey(Keys keys) {
        return keys.full(keys.has("rate_c") ? "rate_c" : "amps");
    }

    /** A current in amperes, given as a multiple of the rating or in amperes. */
    double current(Keys keys, String rate, String amps) {
        boolean asRate = keys.has(rate);
        boolean asAmps = keys.has(amps);
        keys.offers(rate, "1/h", LEAST_RATE_C, MOST_RATE_C, CURRENT + ", " + rate + " or " + amps);
        keys.offers(amps, "A", LEAST_A, MOST_A, CURRENT + ", " + rate + " or " + amps);
        if (asRate == asAmps) {
            if (!keys.good("kind")) {
                return 0;
            }
            page.refuse(RefusalKind.TWO_RATES, keys.full(asRate ? amps : "kind"), asRate ? "both" : "neither",
                    "either " + rate + " or " + amps, CURRENT, asRate ? "Remove one." : "Add one.");
            return 0;
        }
        return asRate
                ? keys.number(rate, "1/h", LEAST_RATE_C, MOST_RATE_C, CURRENT) * rig.cells().ratedAmpHours()
                : keys.number(amps, "A", LEAST_A, MOST_A, CURRENT);
    }
}
