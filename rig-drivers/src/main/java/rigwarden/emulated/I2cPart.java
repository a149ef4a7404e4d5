package rigwarden.emulated;

import java.util.Optional;
import java.util.function.BiFunction;

/**
 * One I2C chip of an emulated rig with whatever is wrong with it.
 *
 * @param <T> which chip
 */
final class I2cPart<T extends PoweredTarget> {
    private final ChipPlace.OnI2c at;
    private final T chip;
    private final BiFunction<T, Wirings, T> again;
    private Optional<FaultyTarget> faulty = Optional.empty();

    /**
     * Healthy.
     *
     * @param again the same chip in the same state on other wires
     */
    I2cPart(ChipPlace.OnI2c at, T chip, BiFunction<T, Wirings, T> again) {
        this.at = at;
        this.chip = chip;
        this.again = again;
    }

    I2cPart<T> copy(Wirings wirings) {
        I2cPart<T> copy = new I2cPart<>(at, again.apply(chip, wirings), again);
        copy.sufferLike(this);
        return copy;
    }

    /** Takes over what is wrong with another chip. */
    void sufferLike(I2cPart<?> other) {
        faulty = other.faulty.map(one -> one.copy(chip));
    }

    void put(EmulatedBoard board) {
        board.put(at.bus(), at.address(), chip);
        faulty.ifPresent(one -> board.replace(at.bus(), at.address(), one));
    }

    void fail(EmulatedBoard board, ChipFault how) {
        if (faulty.isEmpty()) {
            faulty = Optional.of(new FaultyTarget(chip));
            board.replace(at.bus(), at.address(), faulty.get());
        }
        faulty.get().set(how);
    }
}
