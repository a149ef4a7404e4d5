package rigwarden.calibration;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What the maker of a reference meter, or its certificate, states for one range: ± (% of what it shows + counts + % of the
 * range). All points of a calibration are taken in one range.
 *
 * @param name a person's name for the meter
 * @param relative part that grows with what it shows, limits ±, relative
 * @param counts part in its last digit, counts
 * @param digit worth of one count, in the unit that it shows
 * @param rangeRelative part of the range, limits ±, relative
 * @param range end of the range, in the unit that it shows
 * @param calibrated day of its own calibration
 * @param holdsDays days for which the statement holds after that
 */
public record MeterStatement(String name, double relative, double counts, double digit, double rangeRelative, double range,
        LocalDate calibrated, int holdsDays) {
    private static final double RECTANGULAR = Math.sqrt(3);

    public MeterStatement {
        if (!(relative >= 0) || !(counts >= 0) || !(digit > 0) || !(rangeRelative >= 0) || !(range > 0) || holdsDays <= 0) {
            throw new IllegalArgumentException(name + ": not a meter's statement");
        }
    }

    /** Part that does not grow with what it shows, limits ±, in its unit. */
    public double zeroLimits() {
        return counts * digit + rangeRelative * range;
    }

    /** All of it at a value, limits ±, in its unit. */
    public double limits(double shown) {
        return relative * Math.abs(shown) + zeroLimits();
    }

    /**
     * What one of its readings may be off by and the next not, standard, in its unit: one count either way, for rounding and for
     * steps that are not alike.
     */
    public double eachU() {
        return digit / RECTANGULAR;
    }

    /** Last day on which the statement holds. */
    public LocalDate holdsUntil() {
        return calibrated.plusDays(holdsDays);
    }

    /** Why nobody can lean on the statement on a day, in words: its calibration is still to come, or too long ago. */
    public Optional<String> refusedOn(LocalDate day) {
        if (day.isBefore(calibrated)) {
            return Optional.of("meter.calibrated is " + calibrated + ": allowed is a day that has been, up to " + day
                    + ", because nobody can lean on a calibration to come. Look at the meter's certificate.");
        }
        return day.isAfter(holdsUntil())
                ? Optional.of("meter.calibrated is " + calibrated + ": allowed is a day within " + holdsDays + " days of " + day
                        + ", because its statement holds for so long. Have the meter calibrated, or use another.")
                : Optional.empty();
    }
}
