package rigwarden.findings.trace;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** Sums what the sources' and sinks' own meters show over a step: a second witness of the current, where a device has a meter. */
public final class DeviceWatch {
    private final List<Channel> meters;
    private final double[] coulombs;
    private final double[] uncertain;
    private final double[] last;
    private final long[] lastNanos;
    private final double[] seconds;

    public DeviceWatch(Traced rig) {
        meters = rig.channels().stream().filter(c -> c.role() == Role.SOURCE_AMPS || c.role() == Role.SINK_AMPS).toList();
        coulombs = new double[meters.size()];
        uncertain = new double[meters.size()];
        last = new double[meters.size()];
        lastNanos = new long[meters.size()];
        seconds = new double[meters.size()];
    }

    /** A step begins with this scan. */
    public void begin(Scan scan) {
        Arrays.fill(coulombs, 0);
        Arrays.fill(uncertain, 0);
        Arrays.fill(seconds, 0);
        Arrays.fill(last, Double.NaN);
        take(scan);
    }

    public void take(Scan scan) {
        for (int i = 0; i < last.length; i++) {
            if (scan.readings().get(meters.get(i).index()) instanceof Reading.Valid valid) {
                if (!Double.isNaN(last[i])) {
                    double passed = (scan.nanos() - lastNanos[i]) * 1e-9;
                    double mean = (last[i] + valid.value()) / 2;
                    coulombs[i] += passed * (meters.get(i).role() == Role.SOURCE_AMPS ? mean : -mean);
                    uncertain[i] += passed * meters.get(i).uncertainty(mean);
                    seconds[i] += passed;
                }
                last[i] = valid.value();
                lastNanos[i] = scan.nanos();
            }
        }
    }

    /** Nothing where no device of the rig has a meter, or none was read. */
    public Optional<DeviceSum> end() {
        int most = -1;
        double sum = 0;
        double square = 0;
        for (int i = 0; i < last.length; i++) {
            most = seconds[i] > 0 && (most < 0 || Math.abs(coulombs[i]) > Math.abs(coulombs[most])) ? i : most;
            sum += coulombs[i];
            square += uncertain[i] * uncertain[i];
        }
        return most < 0 ? Optional.empty()
                : Optional.of(new DeviceSum(meters.get(most).name(), sum / 3600, Math.sqrt(square) / 3600, seconds[most]));
    }
}
