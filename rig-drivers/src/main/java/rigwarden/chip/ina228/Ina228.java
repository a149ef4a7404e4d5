package rigwarden.chip.ina228;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.loop.Clock;
import rigwarden.warden.Failure;

/**
 * The device. Each scan calls {@link #check}, {@link #current}, {@link #charge} and {@link #bus}: five register reads.
 * The accumulators are never reset.
 */
public final class Ina228 {
    static final long RATIO_STALE_NANOS = 180_000_000_000L;
    private static final long RETRY_NANOS = 1_000_000_000L;
    private static final long POLL_NANOS = 250_000;
    /** Below it, in codes of the current register, the accumulator need not move within a scan. */
    private static final int NEAR_ZERO = 64;

    private final Chip chip;
    private final Clock clock;
    private final Ina228Config config;
    private final Ina228Codec codec;
    private ChipClock chipClock;
    private long edgeDue;
    private long ratioStale;
    private boolean read;
    private long charge;
    private long chargeAt;
    private int current;
    private int currentBefore;

    /** Takes up a device that has been started, with what its driver knew. Nothing is sent. */
    public Ina228(Chip chip, Clock clock, Ina228Config config, Ina228Codec codec, Ina228State state) {
        this.chip = chip;
        this.clock = clock;
        this.config = config;
        this.codec = codec;
        chipClock = state.clock();
        edgeDue = state.edgeDueNanos();
        ratioStale = state.staleNanos();
        read = state.read();
        charge = state.chargeCode();
        chargeAt = state.chargeAtNanos();
        current = state.currentCode();
        currentBefore = state.currentCode();
    }

    /**
     * Checks who answers, reads the accumulator before anything is written, configures, and reads back.
     *
     * @throws BusFailure when the chip is silent, another one, or does not keep its configuration
     */
    public static Ina228 started(Chip chip, Clock clock, Ina228Config config, Ina228Codec codec) throws BusFailure {
        identify(chip);
        Ina228State state = Ina228State.at(clock.nanos());
        Ina228 started = new Ina228(chip, clock, config, codec, state);
        started.charge = Ina228Codec.chargeCode(chip.read(Ina228Registers.CHARGE, Ina228Registers.CHARGE_BYTES));
        started.configure();
        return started;
    }

    private static void identify(Chip chip) throws BusFailure {
        int maker = chip.readWord(Ina228Registers.MANUFACTURER_ID);
        int device = chip.readWord(Ina228Registers.DEVICE_ID);
        if (maker != Ina228Registers.MANUFACTURER || device >> 4 != Ina228Registers.DIE) {
            throw new BusFailure(Failure.NONSENSE, chip + ": maker " + Integer.toHexString(maker) + "h, device "
                    + Integer.toHexString(device) + "h; an INA228 says 5449h and 228xh");
        }
    }

    /**
     * Asks who answers, and reads the calibration, on which every ampere depends. One that is not as written is written anew.
     *
     * @throws BusFailure NONSENSE when it is another chip, CONFIGURATION_LOST when the calibration was not as written
     */
    public void reference() throws BusFailure {
        identify(chip);
        int found = chip.readWord(Ina228Registers.SHUNT_CAL);
        if (found != codec.shuntCalibration()) {
            configure();
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": SHUNT_CAL reads " + Integer.toHexString(found) + "h");
        }
    }

    private void configure() throws BusFailure {
        keep(Ina228Registers.CONFIG, config.configWord(), 0xFFFF);
        keep(Ina228Registers.SHUNT_CAL, codec.shuntCalibration(), 0xFFFF);
        keep(Ina228Registers.DIAG_ALRT, Ina228Registers.ALATCH | Ina228Registers.MEMSTAT, Ina228Registers.ALATCH);
        keep(Ina228Registers.ADC_CONFIG, config.adcWord(), 0xFFFF);
    }

    private void keep(int register, int word, int mask) throws BusFailure {
        chip.writeWord(register, word);
        int found = chip.readWord(register);
        if (((found ^ word) & mask) != 0) {
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": register " + Integer.toHexString(register)
                    + "h reads " + Integer.toHexString(found) + "h, written " + Integer.toHexString(word) + "h");
        }
    }

    /**
     * First part of a scan: the configuration is still there, and a new result is. A configuration that is not is written
     * anew, for the next scan: what the accumulator has lost by then the two sums will tell.
     *
     * @throws BusFailure CONFIGURATION_LOST after a brown-out, NOT_READY without a new result, NONSENSE when the
     *     chip reports its own memory or arithmetic at fault
     */
    public void check() throws BusFailure {
        int found = chip.readWord(Ina228Registers.ADC_CONFIG);
        if (found != config.adcWord()) {
            configure();
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": ADC_CONFIG reads "
                    + Integer.toHexString(found) + "h");
        }
        int flags = chip.readWord(Ina228Registers.DIAG_ALRT);
        if ((flags & Ina228Registers.MEMSTAT) == 0 || (flags & Ina228Registers.MATHOF) != 0) {
            throw new BusFailure(Failure.NONSENSE, chip + ": DIAG_ALRT reads " + Integer.toHexString(flags) + "h");
        }
        if ((flags & Ina228Registers.CNVRF) == 0) {
            throw new BusFailure(Failure.NOT_READY, chip + ": no new conversion");
        }
    }

    /** Code of the current, positive into the cells; {@link Ina228Codec#ampsPerCode} A each. */
    public int current() throws BusFailure {
        int code = Ina228Codec.currentCode(chip.read(Ina228Registers.CURRENT, Ina228Registers.CURRENT_BYTES));
        currentBefore = current;
        current = code;
        return code;
    }

    /**
     * Code of the charge accumulator; call it after {@link #current}.
     *
     * @throws BusFailure also when it stands still although current flowed in this scan and in the last
     */
    public long charge() throws BusFailure {
        long code = Ina228Codec.chargeCode(chip.read(Ina228Registers.CHARGE, Ina228Registers.CHARGE_BYTES));
        long now = clock.nanos();
        boolean flowed = Math.min(Math.abs(current), Math.abs(currentBefore)) > NEAR_ZERO
                && (current ^ currentBefore) >= 0;
        boolean stuck = read && flowed && code == charge && now - chargeAt > 2 * config.cycleNanos();
        if (stuck) {
            throw new BusFailure(Failure.NOT_READY, chip + ": the charge accumulator stands still at " + code);
        }
        read = true;
        charge = code;
        chargeAt = now;
        return code;
    }

    /** Code of the voltage at the bus pin, 195.3125 µV each. */
    public int bus() throws BusFailure {
        return Ina228Codec.busCode(chip.read(Ina228Registers.VBUS, Ina228Registers.VBUS_BYTES));
    }

    /** Host seconds in one second of the chip, as parts in 10⁹ beyond 1; 0 until it is known. */
    public long ratioCode() throws BusFailure {
        if (clock.nanos() > ratioStale) {
            throw new BusFailure(Failure.NOT_READY, chip + ": no edge of the ready flag for three minutes");
        }
        return Math.round((chipClock.ratio() - 1) * 1e9);
    }

    /** Looks for an edge of the ready flag if one is due: at most two results long, after the scan's own reads. */
    public void learnClock() throws BusFailure {
        long now = clock.nanos();
        if (now < edgeDue) {
            return;
        }
        edgeDue = now + RETRY_NANOS;
        long end = now + 2 * config.cycleNanos();
        chip.readWord(Ina228Registers.DIAG_ALRT);
        for (long next = now + POLL_NANOS; next < end; next += POLL_NANOS) {
            clock.sleepUntil(next);
            if ((chip.readWord(Ina228Registers.DIAG_ALRT) & Ina228Registers.CNVRF) != 0) {
                long edge = clock.nanos();
                chipClock = chipClock.with(edge, config.cycleNanos());
                edgeDue = edge + chipClock.intervalNanos();
                ratioStale = edge + RATIO_STALE_NANOS;
                return;
            }
        }
    }

    /** What the driver knows, for a copy that goes on with another chip in the same condition. */
    public Ina228State state() {
        return new Ina228State(chipClock, edgeDue, ratioStale, read, charge, chargeAt, current);
    }
}
