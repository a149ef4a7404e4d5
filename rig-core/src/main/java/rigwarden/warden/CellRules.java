package rigwarden.warden;

import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;

/** Voltages of the cells. Limits hold for the true value: reading ± uncertainty is compared. */
final class CellRules {
    private static final double HOLD_S = 0.3;
    private static final double UNKNOWN_OHMS = 1e-3;
    private static final double LEARNT_SHARE = 0.3;
    private static final double LEARNT_OHMS = 0.2e-3;
    private static final long FOLLOWED_NANOS = 300_000_000_000L;
    private static final double STEADY = 0.02;
    private static final double AGAINST_V = 0.010;
    private static final Set<Role> TAPS = Set.of(Role.CELL_VOLTS);

    private CellRules() {}

    static List<Rule> of(Trips trips) {
        return List.of(
                Rules.trips(1, "cell high",
                        "A cell's voltage plus its uncertainty reaches its highest (median of three scans).",
                        TAPS, trips.cellHighVolts() + " V", HOLD_S, CellRules::high),
                Rules.trips(2, "cell low",
                        "In a run a cell's voltage minus its uncertainty falls to its lowest in discharge or rest (median of three).",
                        TAPS, trips.cellLowVolts() + " V", HOLD_S, CellRules::low),
                Rules.trips(3, "cell low charging",
                        "A cell's voltage minus its uncertainty is under 2.00 V while charging or being recovered (median of three).",
                        TAPS, Envelope.LOW_CHARGING_TRIP_V + " V", HOLD_S, CellRules::lowCharging),
                Rules.trips(4, "pack against cells",
                        "The pack's voltage and the sum of its cells differ by more than their uncertainties explain.",
                        Set.of(Role.CELL_VOLTS, Role.PACK_VOLTS, Role.CURRENT), "uncertainties + 1 mΩ × current per cell; once learnt, + 30 % and 0.2 mΩ", 2,
                        CellRules::sum),
                Rules.trips(10, "voltage against current",
                        "At steady current a cell's voltage goes the way that the current does not push it.",
                        Set.of(Role.CELL_VOLTS, Role.CURRENT), "10 mV in a minute, after five minutes of current", 2,
                        CellRules::against));
    }

    private static Breach high(View view) {
        Breach worst = Breach.NONE;
        double limit = view.places().trips.cellHighVolts();
        for (Channel cell : view.places().cells) {
            if (view.valid(cell)) {
                double volts = view.median3(cell);
                double upper = volts + cell.uncertainty(volts);
                if (upper >= limit && (!worst.found() || volts > worst.value())) {
                    worst = new Breach(cell.index(), volts, limit);
                }
            }
        }
        return worst;
    }

    private static Breach low(View view) {
        boolean charging = view.energised(Way.CHARGE);
        boolean idle = !view.energised() && view.memory().started() == Started.NOT;
        boolean recovering = !view.energised() && view.memory().started() == Started.RECOVERING;
        return charging || idle || recovering ? Breach.NONE : below(view, Math.nextUp(view.places().trips.cellLowVolts()));
    }

    private static Breach lowCharging(View view) {
        boolean recovering = view.memory().started() == Started.RECOVERING && !view.energised(Way.DISCHARGE);
        return view.energised(Way.CHARGE) || recovering ? below(view, Envelope.LOW_CHARGING_TRIP_V) : Breach.NONE;
    }

    private static Breach below(View view, double limit) {
        Breach worst = Breach.NONE;
        for (Channel cell : view.places().cells) {
            if (view.valid(cell)) {
                double volts = view.median3(cell);
                if (volts - cell.uncertainty(volts) < limit && (!worst.found() || volts < worst.value())) {
                    worst = new Breach(cell.index(), volts, limit);
                }
            }
        }
        return worst;
    }

    private static Breach sum(View view) {
        Places places = view.places();
        if (!view.valid(places.pack) || !view.valid(places.current) || !view.allValid(places.cells)) {
            return Breach.NONE;
        }
        double amps = view.value(places.current);
        double pack = view.value(places.pack);
        Learnt learnt = view.memory().past().learnt();
        double over = pack - learnt.volts(amps);
        double ohms = learnt.known()
                ? LEARNT_SHARE * Math.abs(learnt.ohms()) + LEARNT_OHMS
                : UNKNOWN_OHMS * places.cells.length;
        double limit = places.pack.uncertainty(pack) + ohms * Math.abs(amps);
        for (Channel cell : places.cells) {
            over -= view.value(cell);
            limit += cell.uncertainty(view.value(cell));
        }
        return Math.abs(over) > limit ? new Breach(places.pack.index(), over, limit) : Breach.NONE;
    }

    /** Judged only when the path is old enough for its cells to have followed, and the current is what it was. */
    private static Breach against(View view) {
        Places places = view.places();
        Past past = view.memory().past();
        long path = view.memory().inForce().pathSinceNanos();
        boolean old = past.minute().nanos() - path > FOLLOWED_NANOS;
        if (!view.at(Closing.CURRENT) || !old || !view.valid(places.current)) {
            return Breach.NONE;
        }
        double amps = view.value(places.current);
        double before = past.aMinuteAgo(places.current, 0);
        if (Math.abs(amps) < Learnt.LEAST_AMPS || Math.abs(amps - before) > STEADY * Math.abs(amps)) {
            return Breach.NONE;
        }
        for (Channel cell : places.cells) {
            if (view.valid(cell)) {
                double volts = view.value(cell);
                double moved = past.movedSlowly(cell, volts);
                if (moved * Math.signum(amps) < -AGAINST_V) {
                    return new Breach(cell.index(), volts, volts - moved);
                }
            }
        }
        return Breach.NONE;
    }
}
