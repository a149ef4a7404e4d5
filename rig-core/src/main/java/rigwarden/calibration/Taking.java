package rigwarden.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** Takes the means of one channel from scans in which nothing is ordered on. */
public final class Taking {
    private static final double MOST_FAILED = 0.1;

    private final Channel channel;
    private final Optional<Channel> shunt;
    private final Supplier<Scan> scans;
    private final List<Double> celsius = new ArrayList<>();

    /**
     * What was read.
     *
     * @param reads mean, in the channel's unit
     * @param scatter standard deviation of one reading
     * @param scans that it is of
     */
    public record Mean(double reads, double scatter, int scans) {
        /** With what the reference meter showed. */
        public Point shown(double value) {
            return new Point(reads, scatter, scans, value);
        }
    }

    /**
     * From one rig.
     *
     * @param rig without a calibration of the channel
     * @param column that is calibrated
     * @param scans takes the next scan, in its time
     */
    public Taking(Rig rig, String column, Supplier<Scan> scans) {
        channel = rig.column(column).orElseThrow();
        shunt = rig.possible(Role.SHUNT_BODY);
        this.scans = scans;
    }

    /**
     * The mean over the next scans.
     *
     * @return nothing where more than one reading in ten failed, or the channel gave the same reading over and over
     */
    public Optional<Mean> mean(int count) {
        List<Double> values = new ArrayList<>();
        long last = Long.MIN_VALUE;
        int failed = 0;
        for (int i = 0; i < count; i++) {
            Scan scan = scans.get();
            switch (scan.readings().get(channel.index())) {
                case Reading.Valid valid -> {
                    if (valid.takenNanos() != last) {
                        values.add(valid.value());
                        last = valid.takenNanos();
                    }
                }
                case Reading.Failed _ -> failed++;
            }
            shunt.map(probe -> scan.readings().get(probe.index())).ifPresent(this::warm);
        }
        if (failed > MOST_FAILED * count || values.size() < 2) {
            return Optional.empty();
        }
        double mean = mean(values);
        double squares = values.stream().mapToDouble(value -> (value - mean) * (value - mean)).sum();
        return Optional.of(new Mean(mean, Math.sqrt(squares / (values.size() - 1)), values.size()));
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    private void warm(Reading reading) {
        if (reading instanceof Reading.Valid valid) {
            celsius.add(valid.value());
        }
    }

    /** Mean temperature of the shunt in all scans so far, °C. */
    public OptionalDouble shuntCelsius() {
        return celsius.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(mean(celsius));
    }
}
