package rigwarden.kernel;

import com.pi4j.context.Context;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import rigwarden.emulated.EmulatedBoard;

/** The SPI side of the emulated provider, which knows no clock. Each opening is a board of its own, whose nodes stand as the one before left them. */
final class EmulatedSpiHeader implements SpiHeader {
    private final SpiSocket socket = new SpiSocket();
    private EmulatedBoard board = new EmulatedBoard();
    private BooleanSupplier ready = () -> true;

    @Override
    public Context open() {
        board = new EmulatedBoard().putSpi(0, 0, socket).spiNode(1, 0).spiMode(0, 0, socket.mode())
                .input(readyLine(), () -> ready.getAsBoolean());
        return board.context();
    }

    @Override
    public SpiSocket socket() {
        return socket;
    }

    @Override
    public void fails(boolean now) {
        board.refusesSpi(0, now);
    }

    @Override
    public OptionalInt hertz() {
        return OptionalInt.empty();
    }

    @Override
    public OptionalLong openings() {
        return OptionalLong.empty();
    }

    @Override
    public int readyLine() {
        return ContractRig.LOOP;
    }

    @Override
    public boolean ready(BooleanSupplier pinHigh) {
        ready = pinHigh;
        return true;
    }

    @Override
    public void raise() {
        throw new IllegalStateException("the line follows its pin");
    }
}
