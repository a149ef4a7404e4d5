package rigwarden.kernel;

import com.pi4j.context.Context;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import rigwarden.bus.BusFailure;

/**
 * The SPI side of a board's header as the contract needs it: buses 0 and 1, each with a node for its first select. The chip of the
 * contract sits on bus 0; what it heard is seen from outside, never by the library's word.
 */
interface SpiHeader {
    /** A fresh context; nodes keep their modes from one to the next. The caller shuts it down. */
    Context open() throws BusFailure;

    /** What sits on bus 0's first select. */
    SpiSocket socket();

    /** Lets every transfer on bus 0 fail, or no longer. */
    void fails(boolean now);

    /** Clock of the last transfer, where the wires have one. */
    OptionalInt hertz();

    /** How often this process has bus 0's node open, where that can be counted. */
    OptionalLong openings() throws Exception;

    /** Line of a converter's ready pin. */
    int readyLine();

    /**
     * Ties a converter's ready pin to its line.
     *
     * @return whether the line follows the pin; where nothing can drive it, {@link #raise} stands in for the pin
     */
    boolean ready(BooleanSupplier pinHigh);

    /** Asks for a high level of the ready line, for a moment; returns at once. */
    void raise();
}
