package rigwarden.rig;

/**
 * The bus behind the contactor.
 *
 * @param prechargeOhms resistor that fills the capacitors before the contact closes
 * @param farads capacitance of everything on the bus
 * @param bleedOhms resistor that empties it
 * @param decaySeconds proved time after opening by which the bus has left the pack's voltage by more than 5 %
 */
public record BusSide(double prechargeOhms, double farads, double bleedOhms, double decaySeconds) {}
