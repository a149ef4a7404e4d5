package rigwarden.chip.ads1115;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.warden.Failure;

/**
 * The device: three transactions for one input. It remembers nothing between scans. The chip has no identity register;
 * that its configuration register keeps what is written is all that can be checked.
 */
public final class Ads1115 {
    private final Chip chip;
    private final Ads1115Config config;

    /** Takes up a device. Nothing is sent. */
    public Ads1115(Chip chip, Ads1115Config config) {
        this.chip = chip;
        this.config = config;
    }

    /**
     * Writes the configuration without starting a conversion and reads it back.
     *
     * @throws BusFailure when the chip is silent or does not keep it
     */
    public void configure() throws BusFailure {
        int word = config.startWord(0);
        chip.writeWord(Ads1115Registers.CONFIG, word & ~Ads1115Registers.OS);
        compare(word);
    }

    /** Starts a conversion of one input, 0…3. */
    public void start(int input) throws BusFailure {
        chip.writeWord(Ads1115Registers.CONFIG, config.startWord(input));
    }

    /** Time after {@link #start} at which the result must be there, ns. */
    public long conversionNanos() {
        return config.rate().longestNanos();
    }

    /**
     * Takes the result of a conversion.
     *
     * @param input the one that was started
     * @return code, −32768…32767
     * @throws BusFailure NOT_READY while the conversion runs, CONFIGURATION_LOST when the register is not as written
     */
    public int finish(int input) throws BusFailure {
        compare(config.startWord(input));
        return (short) chip.readWord(Ads1115Registers.CONVERSION);
    }

    /**
     * Reads a register that nobody writes: the chip has no identity of its own, and a chip of another kind at its address
     * has something else there.
     *
     * @throws BusFailure NONSENSE when it holds another word
     */
    public void reference() throws BusFailure {
        int found = chip.readWord(Ads1115Registers.LOW_THRESHOLD);
        if (found != Ads1115Registers.LOW_THRESHOLD_RESET) {
            throw new BusFailure(Failure.NONSENSE, chip + ": threshold reads " + Integer.toHexString(found) + "h, 8000h after power-up");
        }
    }

    private void compare(int word) throws BusFailure {
        int found = chip.readWord(Ads1115Registers.CONFIG);
        if ((found | Ads1115Registers.OS) != word) {
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": configuration reads "
                    + Integer.toHexString(found) + "h, written " + Integer.toHexString(word) + "h");
        }
        if (found != word) {
            throw new BusFailure(Failure.NOT_READY, chip + ": conversion still running");
        }
    }
}
