package rigwarden.emulated;

import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import rigwarden.rig.SpiPlace;

/**
 * One SPI chip of an emulated rig with whatever is wrong with it.
 *
 * @param <T> which chip
 */
final class SpiPart<T extends SpiChip> {
    private final SpiPlace at;
    private final T chip;
    private final BiFunction<T, Wirings, T> again;
    private final BiConsumer<T, EmulatedBoard> pins;
    private Optional<FaultySpiTarget> faulty = Optional.empty();

    /**
     * Healthy.
     *
     * @param again the same chip in the same state on other wires
     * @param pins ties those of its own pins to the board that are not the bus
     */
    SpiPart(SpiPlace at, T chip, BiFunction<T, Wirings, T> again, BiConsumer<T, EmulatedBoard> pins) {
        this.at = at;
        this.chip = chip;
        this.again = again;
        this.pins = pins;
    }

    SpiPart<T> copy(Wirings wirings) {
        SpiPart<T> copy = new SpiPart<>(at, again.apply(chip, wirings), again, pins);
        copy.sufferLike(this);
        return copy;
    }

    /** Takes over what is wrong with another chip. */
    void sufferLike(SpiPart<?> other) {
        faulty = other.faulty.map(one -> one.copy(chip));
    }

    void put(EmulatedBoard board) {
        SpiTarget target = faulty.isPresent() ? faulty.get() : chip;
        if (at.line().isPresent()) {
            board.spiNode(at.bus(), at.select()).putSpiByLine(at.bus(), at.line().getAsInt(), false, target);
        } else {
            board.putSpi(at.bus(), at.select(), target);
        }
        pins.accept(chip, board);
    }

    void fail(EmulatedBoard board, ChipFault how) {
        if (faulty.isEmpty()) {
            faulty = Optional.of(new FaultySpiTarget(chip));
            board.replaceSpi(at.bus(), chip, faulty.get());
        }
        faulty.get().set(how);
    }
}
