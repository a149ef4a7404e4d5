package rigwarden.rig;

/**
 * Where the warden trips, for the true value. A rig file may move each of these inward from the {@link Envelope}, and none
 * outward: the maker's sheet of the cells or of a part may be tighter.
 *
 * @param cellHighVolts highest voltage of a cell, V
 * @param cellLowVolts lowest voltage of a cell in discharge and rest, V
 * @param chargingHighCelsius warmest cell body while charging, °C
 * @param chargingLowCelsius coldest cell body while charging, °C
 * @param dischargingHighCelsius warmest cell body in discharge and rest, °C
 * @param dischargingLowCelsius coldest cell body in discharge and rest, °C
 * @param jointCelsius warmest terminal, bar, shunt or contactor, °C
 * @param jointOverRoomKelvin the same over the room, K
 * @param jointOverCellKelvin a terminal over its own cell, K
 */
public record Trips(
        double cellHighVolts,
        double cellLowVolts,
        double chargingHighCelsius,
        double chargingLowCelsius,
        double dischargingHighCelsius,
        double dischargingLowCelsius,
        double jointCelsius,
        double jointOverRoomKelvin,
        double jointOverCellKelvin) {
    /** Where nothing was moved. */
    public static final Trips WIDEST = new Trips(Envelope.HIGH_TRIP_V, Envelope.LOW_TRIP_V, Envelope.CHARGING_HIGH_TRIP_C,
            Envelope.CHARGING_LOW_TRIP_C, Envelope.DISCHARGING_HIGH_TRIP_C, Envelope.DISCHARGING_LOW_TRIP_C,
            Envelope.TERMINAL_TRIP_C, Envelope.TERMINAL_OVER_ROOM_K, Envelope.TERMINAL_OVER_CELL_K);
}
