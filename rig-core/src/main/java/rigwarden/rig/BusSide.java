package rigwarden.rig;

/**
 * The bus behind the contactor.
 *
 * @param prechargeOhms resistor that fills the capacitors before the contact closes
 * @param farads capacitance of everything on the bus
 * @param bleedOhms resistor that empties it
 * @param decaySeconds proved time after opening by which the bus has left the pack's voltage by more than 5 %
 * @param pathOhms most that lies between the pack's measuring point and the bus: fuse, shunt, cables, contacts, the battery's protection
 */
public record BusSide(double prechargeOhms, double farads, double bleedOhms, double decaySeconds, double pathOhms) {}
