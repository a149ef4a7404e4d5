package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.List;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Way;

/** Reads the steps of a programme, each against the rig. */
final class StepKeys {
    private static final List<String> KINDS = List.of("charge", "rest", "discharge", "park");
    private static final long MINUTE_NANOS = 60_000_000_000L;
    private static final int SHORTEST_REST_MIN = 30;
    private static final double PARK_LEAST = 0.3;
    private static final double PARK_MOST = 0.5;
    private static final double ROUNDING = 1 + 1e-9;
    private static final String CURRENT = "a step needs exactly one current";

    private final Page page;
    private final Rig rig;

    StepKeys(Page page, Rig rig) {
        this.page = page;
        this.rig = rig;
    }

    List<Step> steps(Keys root) {
        List<Step> steps = new ArrayList<>();
        for (Keys keys : root.tables("step", RefusalKind.NO_STEPS, "a programme is its steps")) {
            steps.add(step(keys));
            keys.noOthers();
        }
        if (steps.isEmpty() && page.sound()) {
            page.refuse(RefusalKind.NO_STEPS, "step", "an empty list", "at least one [[step]]",
                    "a programme is its steps", "Add one.");
        }
        return List.copyOf(steps);
    }

    private Step step(Keys keys) {
        return switch (keys.word("kind", KINDS, "a step is one of these")) {
            case "rest" -> rest(keys);
            case "discharge" -> new Step.Discharge(within(keys, Way.DISCHARGE), cutOff(keys));
            case "park" -> new Step.Park(charging(keys), share(keys), ceiling(keys));
            case String _ -> charge(keys);
        };
    }

    private Step charge(Keys keys) {
        double amps = charging(keys);
        double ceiling = ceiling(keys);
        double taper = current(keys, "taper_c", "taper_amps");
        String taperKey = keys.has("taper_c") ? "taper_c" : "taper_amps";
        boolean comparable = amps > 0 && keys.good(taperKey) && keys.good(keys.has("rate_c") ? "rate_c" : "amps");
        if (comparable && taper >= amps) {
            page.refuse(RefusalKind.TAPER_NOT_BELOW, keys.full(taperKey),
                    Figures.of(taper, "A"), "less than " + Figures.of(amps, "A"),
                    "the current falls from the charge current to it", "Choose a smaller taper.");
        }
        return new Step.Charge(amps, ceiling, taper);
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

    private double ceiling(Keys keys) {
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

    private double uncertainty(double volts) {
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

    private double charging(Keys keys) {
        double amps = current(keys, "rate_c", "amps");
        double most = Envelope.CHARGE_C * rig.cells().ratedAmpHours();
        if (amps > most * ROUNDING) {
            page.refuse(RefusalKind.CHARGE_FAST, rateKey(keys), "at most " + Figures.of(Envelope.CHARGE_C, "1/h")
                    + ", here " + Figures.of(most, "A"), "the envelope lets no cell be charged faster", "");
            return amps;
        }
        governed(keys, amps, Way.CHARGE);
        return amps;
    }

    private double within(Keys keys, Way way) {
        double amps = current(keys, "rate_c", "amps");
        governed(keys, amps, way);
        return amps;
    }

    private void governed(Keys keys, double amps, Way way) {
        Governing governing = Governing.of(rig, way);
        if (amps > governing.amps() * ROUNDING) {
            page.refuse(RefusalKind.OVER_WEAKEST, rateKey(keys), Figures.of(amps, "A"),
                    "at most " + Figures.of(governing.amps(), "A"),
                    "that is what " + governing.part() + " may carry for hours", "Lower the rate.");
        }
    }

    private static String rateKey(Keys keys) {
        return keys.full(keys.has("rate_c") ? "rate_c" : "amps");
    }

    /** A current in amperes, given as a multiple of the rating or in amperes. */
    private double current(Keys keys, String rate, String amps) {
        boolean asRate = keys.has(rate);
        boolean asAmps = keys.has(amps);
        if (asRate == asAmps) {
            if (!keys.good("kind")) {
                return 0;
            }
            page.refuse(RefusalKind.TWO_RATES, keys.full(asRate ? amps : "kind"), asRate ? "both" : "neither",
                    "either " + rate + " or " + amps, CURRENT, asRate ? "Remove one." : "Add one.");
            return 0;
        }
        return asRate
                ? keys.number(rate, "1/h", 0.001, 5, CURRENT) * rig.cells().ratedAmpHours()
                : keys.number(amps, "A", 0.01, 2000, CURRENT);
    }
}
