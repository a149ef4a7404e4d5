package rigwarden.rig;

import java.util.OptionalInt;

/**
 * GPIO lines of the rig's own panel, by the controller's line numbers. Outputs are active high and pulled low by hardware. Relays of sources and sinks
 * stand with them.
 *
 * @param contactor output, coil order of K1
 * @param precharge output, coil order of the pre-charge relay
 * @param heartbeat output, toggled once a scan while a lease is in force
 * @param sounder output
 * @param loop input, high while the loop of normally-closed contacts is closed
 * @param coilFeed input, high while the coil supply behind loop and heartbeat stage is alive
 * @param feedback input, high while K1's mirror contact says closed
 * @param arm input, high while the arm key is turned
 * @param controller number N of the controller gpiochipN whose lines these are; empty: the one of a board that the
 *     library for its lines knows
 */
public record Panel(
        int contactor,
        int precharge,
        int heartbeat,
        int sounder,
        int loop,
        int coilFeed,
        int feedback,
        int arm,
        OptionalInt controller) {
    /** The panel of a board that is known. */
    public Panel(int contactor, int precharge, int heartbeat, int sounder, int loop, int coilFeed, int feedback, int arm) {
        this(contactor, precharge, heartbeat, sounder, loop, coilFeed, feedback, arm, OptionalInt.empty());
    }
}
