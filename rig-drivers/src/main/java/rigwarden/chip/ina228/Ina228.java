package rigwarden.chip.ina228;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.bus.NoReading;
import rigwarden.loop.Clock;
import rigwarden.rig.Channels;
import rigwarden.rig.ShuntMonitor;
import rigwarden.warden.Failure;

/** The shunt monitor: current, accumulated charge, voltage of the pack's end studs, and the ratio of the two clocks. */
public final class Ina228 {
    /** Poll of the ready flag while its edge is looked for, ns. */
    private static final long POLL_NANOS = 250_000L;
    private static final long[] FIRST_EDGES_NANOS = {0, 1_000_000_000L, 10_000_000_000L, 60_000_000_000L};
    private static final long EDGE_PERIOD_NANOS = 60_000_000_000L;
    private static final long SECONDS_TO_TRUST = 10_000_000_000L;

    /**
     * What the driver remembers.
     *
     * @param edges edges found so far
     * @param baseNanos the first edge
     * @param ratio host ÷ chip clock by the edges so far; 1 before there are two
     * @param nextEdgeNanos when the next edge is looked for
     * @param learnt whether the base is long enough for the ratio to be published
     * @param polls reads of the flag spent on edges
     * @param current code of the last sample
     * @param charge code of the last sample
     * @param bus code of the last sample
     */
    public record State(int edges, long baseNanos, double ratio, long nextEdgeNanos, boolean learnt, long polls,
            long current, long charge, long bus) {
        public static final State FRESH = new State(0, 0, 1, Long.MIN_VALUE, false, 0, 0, 0, 0);
    }

    private final Chip chip;
    private final ShuntMonitor shunt;
    private int edges;
    private long baseNanos;
    private double ratio;
    private long nextEdgeNanos;
    private boolean learnt;
    private long polls;
    private long current;
    private long charge;
    private long bus;

    public Ina228(Chip chip, ShuntMonitor shunt, State state) {
        this.chip = chip;
        this.shunt = shunt;
        edges = state.edges();
        baseNanos = state.baseNanos();
        ratio = state.ratio();
        nextEdgeNanos = state.nextEdgeNanos();
        learnt = state.learnt();
        polls = state.polls();
        current = state.current();
        charge = state.charge();
        bus = state.bus();
    }

    public State state() {
        return new State(edges, baseNanos, ratio, nextEdgeNanos, learnt, polls, current, charge, bus);
    }

    /**
     * Checks who answers, reads the accumulator before anything is changed, configures and reads back. An accumulator
     * that runs under the right configuration is left running.
     *
     * @throws BusFailure when the chip is not there, is another chip or does not keep what is written
     */
    public void begin() throws BusFailure {
        if (chip.read(Registers.MANUFACTURER_ID, 2) != Registers.MANUFACTURER
                || chip.read(Registers.DEVICE_ID, 2) >> 4 != Registers.DIE) {
            throw new BusFailure("the chip at the shunt monitor's address is no INA228");
        }
        charge = Ina228Codec.signed40(chip.read(Registers.CHARGE, 5));
        set(Registers.CONFIG, 0);
        set(Registers.SHUNT_CAL, Ina228Codec.shuntCal(Channels.ampsPerCode(shunt), shunt.ohms()));
        set(Registers.ADC_CONFIG, Ina228Codec.ADC_CONFIG);
    }

    private void set(int register, int bits) throws BusFailure {
        if (chip.read(register, 2) != bits) {
            chip.write(register, bits, 2);
        }
        if (chip.read(register, 2) != bits) {
            throw new BusFailure("the shunt monitor does not keep its configuration");
        }
    }

    /**
     * Takes one sample: five register reads.
     *
     * @throws NoReading when the configuration is not what was written, no conversion has completed, or nothing answers
     */
    public void sample() throws NoReading {
        try {
            if (chip.read(Registers.ADC_CONFIG, 2) != Ina228Codec.ADC_CONFIG) {
                throw new NoReading(Failure.CONFIGURATION_LOST);
            }
            if ((chip.read(Registers.DIAG_ALRT, 2) & Registers.CONVERSION_READY) == 0) {
                throw new NoReading(Failure.NOT_READY);
            }
            current = Ina228Codec.signed20(chip.read(Registers.CURRENT, 3));
            charge = Ina228Codec.signed40(chip.read(Registers.CHARGE, 5));
            bus = Ina228Codec.unsigned20(chip.read(Registers.VBUS, 3));
        } catch (BusFailure e) {
            throw new NoReading(Failure.NO_ANSWER);
        }
    }

    public long currentCode() {
        return current;
    }

    public long chargeCode() {
        return charge;
    }

    public long busCode() {
        return bus;
    }

    /** (ratio − 1) in parts of 10⁹; 0 until it is known to better than 20 ppm. */
    public long ratioCode() {
        return learnt ? Math.round((ratio - 1) / Channels.RATIO_STEP) : 0;
    }

    /** Looks for an edge of the ready flag when one is due: now, after a second, after ten, then once a minute. */
    public void learnClock(Clock clock) {
        long now = clock.nanos();
        if (nextEdgeNanos == Long.MIN_VALUE) {
            nextEdgeNanos = now;
        }
        if (now < nextEdgeNanos) {
            return;
        }
        try {
            chip.read(Registers.DIAG_ALRT, 2);
            polls++;
            long deadline = now + 2 * Ina228Codec.CYCLE_NANOS;
            while (clock.nanos() < deadline) {
                clock.sleepUntil(clock.nanos() + POLL_NANOS);
                polls++;
                if ((chip.read(Registers.DIAG_ALRT, 2) & Registers.CONVERSION_READY) != 0) {
                    edge(clock.nanos() - POLL_NANOS / 2);
                    break;
                }
            }
        } catch (BusFailure e) {
            edges = 0;
        }
        long wait = edges < FIRST_EDGES_NANOS.length ? FIRST_EDGES_NANOS[edges] : EDGE_PERIOD_NANOS;
        nextEdgeNanos = now + Math.max(wait, 1_000_000_000L);
    }

    private void edge(long nanos) {
        if (edges == 0) {
            baseNanos = nanos;
        } else {
            long base = nanos - baseNanos;
            long cycles = Math.round(base / (Ina228Codec.CYCLE_NANOS * ratio));
            ratio = (double) base / (cycles * Ina228Codec.CYCLE_NANOS);
            learnt = base > SECONDS_TO_TRUST;
        }
        edges++;
    }
}
