package rigwarden.panel;

import rigwarden.bus.BusFailure;

/** A line that can be driven, on the header or on an expander. */
interface OutputLine {
    /** Drives it. Whatever is thrown, the level is not known. */
    void drive(boolean up) throws BusFailure;
}
