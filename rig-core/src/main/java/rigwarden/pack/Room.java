package rigwarden.pack;

/**
 * Temperature of the air.
 *
 * @param celsius at the start
 * @param kelvinPerHour drift, 0 for a constant room
 */
public record Room(double celsius, double kelvinPerHour) {}
