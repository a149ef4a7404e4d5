/** Calibrating a channel against a reference meter: points, the straight line through them, the file that keeps it. */
package rigwarden.calibration;
