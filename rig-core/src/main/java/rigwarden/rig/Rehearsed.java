package rigwarden.rig;

/**
 * What a rehearsal of this rig assumes of the world. Nothing of it is used with real cells.
 *
 * @param roomCelsius room at the start, °C
 * @param roomKelvinPerHour drift of the room, K/h
 * @param chargeSpread state of charge, highest − lowest cell, 0…0.2
 * @param capacitySpread standard deviation of the cells' capacities, relative
 */
public record Rehearsed(double roomCelsius, double roomKelvinPerHour, double chargeSpread, double capacitySpread) {}
