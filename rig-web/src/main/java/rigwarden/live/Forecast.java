package rigwarden.live;

import java.util.OptionalLong;

/**
 * What will end the running step, and when.
 *
 * @param ends in words
 * @param leftNanos time until then, about; empty where an honest figure cannot be given
 * @param basis what the estimate stands on, or why there is none
 */
public record Forecast(String ends, OptionalLong leftNanos, String basis) {
    static Forecast about(String ends, double hours, String basis) {
        return new Forecast(ends, OptionalLong.of(Math.round(hours * 3600e9)), basis);
    }

    static Forecast open(String ends, String why) {
        return new Forecast(ends, OptionalLong.empty(), why);
    }
}
