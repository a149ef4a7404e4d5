package rigwarden.chip.ads1220;

import rigwarden.bus.BusFailure;
import rigwarden.bus.ReadyLine;
import rigwarden.bus.SpiChip;
import rigwarden.loop.Clock;
import rigwarden.warden.Failure;

/**
 * The device: four transactions for one input. It has no status register: its ready line says that a conversion began and
 * that it ended. It has no identity either; that its registers keep what is written is all that can be checked. It
 * remembers nothing between scans.
 */
public final class Ads1220 {
    /** After a reset the chip listens to nothing for 50 µs and 32 clocks (SBAS501C, RESET command; from memory). */
    private static final long RESET_NANOS = 100_000;

    private final SpiChip chip;
    private final ReadyLine ready;
    private final Clock clock;
    private final Ads1220Config config;

    /** Takes up a device. Nothing is sent. */
    public Ads1220(SpiChip chip, ReadyLine ready, Clock clock, Ads1220Config config) {
        this.chip = chip;
        this.ready = ready;
        this.clock = clock;
        this.config = config;
    }

    /**
     * Resets the chip, writes its registers without starting a conversion and reads them back.
     *
     * @throws BusFailure when the chip is silent or does not keep them
     */
    public void configure() throws BusFailure {
        chip.write(Ads1220Registers.RESET);
        clock.sleepUntil(clock.nanos() + RESET_NANOS);
        chip.write(Ads1220Registers.WREG_ALL, config.registers(0));
        compare(0);
    }

    /**
     * Starts a conversion of one input, 0…3.
     *
     * @throws BusFailure NOT_READY when the ready line does not say that it began
     */
    public void start(int input) throws BusFailure {
        chip.write(Ads1220Registers.WREG_FIRST, config.registers(input)[0]);
        chip.write(Ads1220Registers.START);
        if (ready.isLow()) {
            throw new BusFailure(Failure.NOT_READY, chip + ": no conversion began");
        }
    }

    /** Time after {@link #start} at which the result must be there, ns. */
    public long conversionNanos() {
        return config.longestNanos();
    }

    /**
     * Takes the result of a conversion. The ready line is asked first: any transaction lifts it. Registers that are not
     * as written cost the reading and are written anew; they are looked at where no result came too, since a chip that has
     * lost them converts slowly.
     *
     * @param input the one that was started
     * @return code, −8388608…8388607
     * @throws BusFailure NOT_READY while the conversion runs, CONFIGURATION_LOST when a register is not as written
     */
    public int finish(int input) throws BusFailure {
        boolean done = ready.isLow();
        try {
            compare(input);
        } catch (BusFailure lost) {
            if (lost.why() == Failure.CONFIGURATION_LOST) {
                chip.write(Ads1220Registers.WREG_ALL, config.registers(input));
            }
            throw lost;
        }
        if (!done) {
            throw new BusFailure(Failure.NOT_READY, chip + ": conversion still running");
        }
        return Ads1220Codec.code(chip.read(Ads1220Registers.RDATA, 3));
    }

    private void compare(int input) throws BusFailure {
        int[] written = config.registers(input);
        byte[] found = chip.read(Ads1220Registers.RREG_ALL, Ads1220Registers.COUNT);
        for (int i = 0; i < written.length; i++) {
            if ((found[i] & 0xFF) != written[i]) {
                throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": register " + i + " reads "
                        + Integer.toHexString(found[i] & 0xFF) + "h, written " + Integer.toHexString(written[i]) + "h");
            }
        }
    }
}
