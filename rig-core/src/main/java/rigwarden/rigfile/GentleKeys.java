package rigwarden.rigfile;

import java.util.List;
import rigwarden.program.Step;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;

/** Reads the steps that only a programmable device can do: pulse, balance, recover, prove protection. */
final class GentleKeys {
    private static final long SECOND_NANOS = 1_000_000_000L;
    private static final long MINUTE_NANOS = 60 * SECOND_NANOS;
    private static final double ROUNDING = 1 + 1e-9;
    private static final String TOLD = "this step tells its current";

    private final Page page;
    private final Rig rig;
    private final StepKeys steps;

    GentleKeys(Page page, Rig rig, StepKeys steps) {
        this.page = page;
        this.rig = rig;
        this.steps = steps;
    }

    Step pulse(Keys keys) {
        int through = told(keys, any(keys));
        double amps = steps.within(keys, through);
        double base = steps.current(keys, "base_rate_c", "base_amps");
        if (base >= amps && keys.good(keys.has("rate_c") ? "rate_c" : "amps")) {
            page.refuse(RefusalKind.PULSE_FLAT, StepKeys.rateKey(keys), Figures.of(amps, "A"),
                    "more than " + Figures.of(base, "A"), "the resistance is the difference of two currents",
                    "Pulse higher, or begin lower.");
        }
        return new Step.Pulse(through, base,
                keys.whole("base_s", "s", 1, 600, "the voltage must have settled at the first current") * SECOND_NANOS,
                amps, keys.whole("pulse_s", "s", 1, 60, "longer is a discharge") * SECOND_NANOS);
    }

    Step balance(Keys keys) {
        int through = told(keys, steps.through(keys, true));
        double amps = steps.charging(keys, through);
        double ceiling = steps.ceiling(keys);
        double end = keys.number("end_amps", "A", 0.01, 100, "cells in parallel are balanced when hardly any flows");
        return new Step.Balance(through, amps, ceiling, end,
                keys.whole("hold_min", "min", 1, 600, "a small current for a moment says nothing") * MINUTE_NANOS);
    }

    Step recover(Keys keys) {
        int through = told(keys, steps.through(keys, true));
        return new Step.Recover(through, gently(keys, through),
                keys.number("until_v", "V", Envelope.LOW_CHARGING_V, 3.2, "from there a charge may go on"));
    }

    Step prove(Keys keys) {
        int through = told(keys, any(keys));
        double u = steps.uncertainty(Envelope.CEILING_V);
        if (u > Envelope.TAP_U_NAMED_V) {
            page.refuse(RefusalKind.PROOF_BLIND, keys.full("kind"), "taps with U = " + Figures.of(u * 1e3, "mV"),
                    "at most " + Figures.of(Envelope.TAP_U_NAMED_V * 1e3, "mV"),
                    "between the protection's edge and the warden's there is no more room", "Calibrate the taps.");
        }
        double margin = u + MARGIN_V;
        double limit = rig.devices().get(through).charges()
                ? Math.min(Envelope.PROVE_HIGH_V, rig.guards().trips().cellHighVolts() - margin)
                : Math.max(Envelope.PROVE_LOW_V, rig.guards().trips().cellLowVolts() + margin);
        return new Step.ProveProtection(through, gently(keys, through), limit);
    }

    private static final double MARGIN_V = 0.003;

    /** Any device of the rig, by name. */
    private int any(Keys keys) {
        List<String> names = rig.devices().stream().map(Device::name).toList();
        return steps.place(keys.word("with", names, "the device gives the direction"));
    }

    private int told(Keys keys, int through) {
        Device device = rig.devices().get(through);
        if (device.switched()) {
            page.refuse(RefusalKind.NEEDS_SET_POINT, keys.full(keys.has("with") ? "with" : "kind"), device.name(),
                    "a programmable source or sink", TOLD + ", and " + device.name() + " takes none",
                    "Use another device, or leave the step out.");
        }
        return through;
    }

    private double gently(Keys keys, int through) {
        double amps = steps.within(keys, through);
        double most = Envelope.RECOVER_C * rig.cells().ratedAmpHours();
        if (amps > most * ROUNDING) {
            page.refuse(RefusalKind.NOT_GENTLE, StepKeys.rateKey(keys), Figures.of(amps, "A"),
                    "at most " + Figures.of(most, "A"), "so near to the edge a cell bears no more", "Lower the rate.");
        }
        return amps;
    }
}
