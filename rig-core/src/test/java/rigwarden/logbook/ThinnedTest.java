package rigwarden.logbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.rig.Channel;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

class ThinnedTest {
    private static final int SCANS = 5000;

    @TempDir
    Path dir;

    private final List<Scan> offered = new ArrayList<>();
    private List<Channel> channels = List.of();

    private RunReader written() {
        AnyRun run = new AnyRun(11, 4, 0.01, 0);
        channels = run.channels();
        Path file = dir.resolve("0001.db");
        try (RunWriter writer = RunWriter.create(file, AnyRun.ABOUT, channels, RunSettings.USUAL.withBallast(0), _ -> {})) {
            for (int i = 0; i < SCANS; i++) {
                Scan scan = run.scan();
                offered.add(scan);
                writer.offer(scan, Inbox.EMPTY, Orders.OFF, List.of());
            }
        }
        return RunReader.open(file);
    }

    private DoubleStream values(int channel, long fromNanos, long toNanos) {
        return offered.stream().filter(s -> s.nanos() >= fromNanos && s.nanos() < toNanos)
                .map(s -> s.readings().get(channel))
                .filter(r -> r instanceof Reading.Valid)
                .mapToDouble(r -> ((Reading.Valid) r).value());
    }

    @Test
    void the_lowest_and_the_highest_reading_of_the_whole_run_are_in_it_however_few_the_buckets() {
        try (RunReader reader = written()) {
            Thinned thinned = reader.thinned(channels, 0, Long.MAX_VALUE, 7);

            assertThat(thinned.nanos()).hasSize(7);
            for (int channel = 0; channel < channels.size(); channel++) {
                assertThat(DoubleStream.of(thinned.low()[channel]).min())
                        .isEqualTo(values(channel, 0, Long.MAX_VALUE).min());
                assertThat(DoubleStream.of(thinned.high()[channel]).max())
                        .isEqualTo(values(channel, 0, Long.MAX_VALUE).max());
            }
        }
    }

    @Test
    void a_part_of_the_run_holds_that_part_and_nothing_else() {
        try (RunReader reader = written()) {
            long from = offered.get(1200).nanos();
            long to = offered.get(1500).nanos();

            Thinned thinned = reader.thinned(channels, from, to, 10);

            assertThat(thinned.nanos()[0]).isEqualTo(from);
            assertThat(DoubleStream.of(thinned.high()[0]).max()).isEqualTo(values(0, from, to).max());
            assertThat(DoubleStream.of(thinned.low()[0]).min()).isEqualTo(values(0, from, to).min());
        }
    }

    @Test
    void closer_than_a_scan_a_bucket_is_one_scan() {
        try (RunReader reader = written()) {
            Thinned thinned = reader.thinned(channels, offered.get(10).nanos(), offered.get(20).nanos(), 500);

            assertThat(thinned.nanos()).hasSize(10);
        }
    }

    @Test
    void where_there_is_nothing_nothing_comes_back() {
        try (RunReader reader = written()) {
            assertThat(reader.thinned(channels, 0, 1, 100).nanos()).isEmpty();
            assertThat(reader.thinned(channels, Long.MAX_VALUE - 1, Long.MAX_VALUE, 100).nanos()).isEmpty();
        }
    }
}
