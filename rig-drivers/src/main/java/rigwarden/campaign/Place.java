package rigwarden.campaign;

import rigwarden.emulated.BoardFault;

/**
 * A part of the rig at which a kind of fault can happen.
 *
 * @param name as in the rig file where the part has a name there
 * @param making makes the fault of a size
 */
public record Place(String name, Making making) {
    /** Makes a fault. */
    @FunctionalInterface
    public interface Making {
        /**
         * A fault.
         *
         * @param size in the kind's unit; may be negative where the kind has two sides
         * @param seed for what is drawn while it goes on
         */
        BoardFault make(double size, long seed);
    }
}
