package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import rigwarden.proof.HealthyNights.Night;

/**
 * No trip on a healthy night, for as many hours of each reference rig as {@code -Drigwarden.hours} says; two by default.
 * With no trip in N hours the true rate is, 95 % sure, below 3 ÷ N an hour (the rule of three).
 */
class HealthyNightsTest {
    private static final double HOURS = Double.parseDouble(System.getProperty("rigwarden.hours", "2"));
    /** A quiet one rests seven hours longer than the others. */
    private static final double LONGEST_NIGHT = 47;
    private static final double USUAL_NIGHT = 29;

    @Test
    void nothing_trips_while_nothing_is_wrong() {
        for (String bench : List.of("one-cell", "eight-cells")) {
            double most = Math.min(HOURS, LONGEST_NIGHT);
            List<Night> nights = LongStream.rangeClosed(1, Math.max(1, Math.round(HOURS / USUAL_NIGHT))).parallel()
                    .mapToObj(seed -> night(bench, seed, most)).toList();

            double hours = nights.stream().mapToDouble(Night::hours).sum();
            long trips = nights.stream().filter(n -> n.trip().isPresent()).count();
            System.out.printf("%s: %d nights, %.1f h, %d trips; 95 %% sure below one in %.0f h; all voltages' codes stood still for %.1f h%n", bench, nights.size(), hours,
                    trips, hours / 3, nights.stream().mapToDouble(Night::frozenHours).max().orElseThrow());
            assertThat(nights).filteredOn(n -> n.trip().isPresent()).isEmpty();
            assertThat(nights).as("codes that stand still for hours").filteredOn(n -> HOURS > LONGEST_NIGHT && HealthyNights.quiet(n.seed()) && n.frozenHours() < 3.9).isEmpty();
            assertThat(nights).as("come to their end").filteredOn(n -> HOURS > LONGEST_NIGHT && !n.ended()).isEmpty();
        }
    }

    /** Of a night in the default run too: four hours in which every voltage gives one code are no reason to trip. */
    @Test
    void voltages_that_stand_still_for_hours_are_no_failed_channels() {
        Night still = night("one-cell", 3, LONGEST_NIGHT);

        assertThat(still.trip()).isEmpty();
        assertThat(still.ended()).isTrue();
        assertThat(still.frozenHours()).isGreaterThan(3.9);
    }

    private static Night night(String bench, long seed, double mostHours) {
        try {
            return HealthyNights.night(bench, seed, mostHours);
        } catch (Exception e) {
            throw new AssertionError(bench + ", seed " + seed, e);
        }
    }
}
