package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import rigwarden.calibration.Point;
import rigwarden.calibration.Taking;

/** Asks a person for the points of a calibration, one after the other, and reads the channel while the meter is looked at. */
final class AskedPoints {
    private final Taking taking;
    private final int scans;
    private final String unit;
    private final String shows;
    private final BufferedReader person;
    private final PrintStream terminal;

    /**
     * Nothing was asked yet.
     *
     * @param scans that each mean is of
     * @param unit of the channel
     * @param shows unit of the meter
     */
    AskedPoints(Taking taking, int scans, String unit, String shows, BufferedReader person, PrintStream terminal) {
        this.taking = taking;
        this.scans = scans;
        this.unit = unit;
        this.shows = shows;
        this.person = person;
        this.terminal = terminal;
    }

    /** All points, until an empty line. */
    List<Point> all() throws IOException {
        List<Point> points = new ArrayList<>();
        while (true) {
            terminal.printf("Point %d. Set a value, wait until it stands, and type what the meter shows in %s (an empty line: no more): ",
                    points.size() + 1, shows);
            terminal.flush();
            String typed = person.readLine();
            if (typed == null || typed.isBlank()) {
                return points;
            }
            OptionalDouble shown = Typed.number(typed);
            if (shown.isEmpty()) {
                terminal.println(Typed.HOW);
                continue;
            }
            Optional<Taking.Mean> mean = taking.mean(scans);
            if (mean.isEmpty()) {
                terminal.println("The channel gave too few readings; nothing was kept. Look at its chip and its wires, then try this point again.");
                continue;
            }
            terminal.printf(Locale.ROOT, "  reads %.6g %s, scatters by %.2g, %d readings. Enter keeps it; \"no\" drops it (the meter moved): ",
                    mean.get().reads(), unit, mean.get().scatter(), mean.get().scans());
            terminal.flush();
            String kept = person.readLine();
            if (kept != null && kept.isBlank()) {
                points.add(mean.get().shown(shown.getAsDouble()));
            }
        }
    }
}
