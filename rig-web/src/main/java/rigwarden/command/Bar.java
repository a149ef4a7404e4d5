package rigwarden.command;

import java.io.PrintStream;
import java.util.Locale;

/** One moving line on a terminal: how far the night is, what it does, and how long it still takes on this machine, about. */
final class Bar {
    private static final int CELLS = 24;
    private static final int WIDTH = 100;

    private final PrintStream out;
    private final double plannedHours;
    private final long beganNanos;

    /**
     * A bar at its beginning.
     *
     * @param plannedHours of the whole programme, about, above 0
     * @param beganNanos of the clock on the wall
     */
    Bar(PrintStream out, double plannedHours, long beganNanos) {
        this.out = out;
        this.plannedHours = plannedHours;
        this.beganNanos = beganNanos;
    }

    /** Draws it; a night that takes longer than was thought stays just before its end. */
    void draw(double hours, String doing, long nowNanos) {
        out.print("\r" + line(hours, doing, nowNanos));
        out.flush();
    }

    /** The line, of a fixed width. */
    String line(double hours, String doing, long nowNanos) {
        double share = Math.clamp(hours / plannedHours, 0, 0.99);
        int full = (int) (share * CELLS);
        double spent = (nowNanos - beganNanos) * 1e-9;
        String left = share < 0.01 ? "" : String.format(Locale.ROOT, ", about %.0f s left", spent * (1 - share) / share);
        String line = String.format(Locale.ROOT, "  %s%s %5.2f h  %s%s", "=".repeat(full), ".".repeat(CELLS - full), hours,
                doing, left);
        return line.length() >= WIDTH ? line.substring(0, WIDTH) : line + " ".repeat(WIDTH - line.length());
    }

    /** Leaves the line empty. */
    void wipe() {
        out.print("\r" + " ".repeat(WIDTH) + "\r");
        out.flush();
    }
}
