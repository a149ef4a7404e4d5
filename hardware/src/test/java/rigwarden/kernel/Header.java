package rigwarden.kernel;

import com.pi4j.context.Context;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.I2cTarget;

/** A board's header as the contract needs it: opened by the product, seen and meddled with from outside. */
interface Header {
    /** The I2C bus that every header has. */
    int BUS = 7;

    /** A fresh context, as the product opens it; the caller shuts it down. */
    Context open() throws BusFailure;

    /** Whether a line is claimed as an output by anybody. */
    boolean claimed(int line) throws Exception;

    /** The level at a line, claimed or let go; never the library's memory of it. */
    boolean high(int line) throws Exception;

    /** Asks for a short high pulse at the stop loop's input; returns at once. */
    void pulse();

    /** Wires a chip, in place of the one that was there. */
    void put(int address, I2cTarget chip);

    /** Lets a driver of the kernel's own hold an address, or release it. */
    void held(int address, boolean holds);

    /** Combined transfers (write, repeated start, read) since the header was made. */
    long combined();
}
