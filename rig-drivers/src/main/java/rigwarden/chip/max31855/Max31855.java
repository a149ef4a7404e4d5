package rigwarden.chip.max31855;

import rigwarden.bus.BusFailure;
import rigwarden.bus.SpiChip;
import rigwarden.warden.Failure;

/**
 * The device: one transaction for a reading. It has no registers, no identity and no flag for a new conversion, so that
 * nothing can prove that it still converts. It remembers nothing between scans.
 */
public final class Max31855 {
    private final SpiChip chip;
    private final Couple couple;

    /** Takes up a device whose letter is the couple's. Nothing is sent. */
    public Max31855(SpiChip chip, Couple couple) {
        this.chip = chip;
        this.couple = couple;
    }

    /**
     * Looks whether a frame comes that can be one; an open probe is one.
     *
     * @throws BusFailure NO_ANSWER when the bus is stuck, NONSENSE when it is no frame
     */
    public void reference() throws BusFailure {
        frame();
    }

    /**
     * Reads the hot junction and takes the chip's straight line out of it.
     *
     * @return code, 0.0625 °C each
     * @throws BusFailure OPEN, SHORTED, NONSENSE or NO_ANSWER
     */
    public int read() throws BusFailure {
        int frame = frame();
        if ((frame & Max31855Codec.OPEN) != 0) {
            throw new BusFailure(Failure.OPEN, chip + ": probe open");
        }
        if ((frame & Max31855Codec.SHORTED) != 0) {
            throw new BusFailure(Failure.SHORTED, chip + ": probe shorted");
        }
        double cold = Max31855Codec.coldCode(frame) * Max31855Codec.COLD_CELSIUS_PER_CODE;
        double hot = couple.celsius(Max31855Codec.code(frame) * Max31855Codec.CELSIUS_PER_CODE, cold);
        return (int) Math.round(hot / Max31855Codec.COLD_CELSIUS_PER_CODE);
    }

    private int frame() throws BusFailure {
        int frame = Max31855Codec.frame(chip.listen(Integer.BYTES));
        if (frame == 0 || frame == -1) {
            throw new BusFailure(Failure.NO_ANSWER, chip + ": the bus is stuck, all bits read " + (frame & 1));
        }
        boolean faults = (frame & (Max31855Codec.SHORTED | Max31855Codec.OPEN)) != 0;
        boolean said = (frame & Max31855Codec.FAULT) != 0;
        if ((frame & Max31855Codec.RESERVED) != 0 || faults != said) {
            throw new BusFailure(Failure.NONSENSE, chip + ": " + Integer.toHexString(frame) + "h is no frame of a MAX31855");
        }
        return frame;
    }
}
