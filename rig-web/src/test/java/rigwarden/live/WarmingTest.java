package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** Bodies that follow in hours, joints that follow in minutes: curves made here, not by the pack model. */
class WarmingTest {
    private static final double ROOM = 20;
    private static Rig rig;

    @BeforeAll
    static void aRig() {
        rig = ((Read.Sound<Rig>) RigFile.read(Path.of("..", "hardware", "rigs", "eight-cells.toml"))).value();
    }

    private static double settling(double most, double constantHours, double hours) {
        return most * -Math.expm1(-hours / constantHours);
    }

    /** A scan in which bodies are at one temperature, all that carries current at another, and one place at a third. */
    private static Scan scan(double hours, double body, double part, Channel special, double there) {
        long nanos = Math.round(hours * 3600e9);
        List<Reading> readings = new ArrayList<>();
        for (Channel channel : rig.channels()) {
            double celsius = channel == special ? there
                    : channel.role() == Role.BODY ? body : channel.role().warmsByCurrent() ? part : ROOM;
            readings.add(new Reading.Valid(0, celsius, nanos));
        }
        return new Scan(1, nanos, readings);
    }

    private static Warming after(double hours, DoubleUnaryOperator body, DoubleUnaryOperator over, Channel special, DoubleUnaryOperator there) {
        Warming warming = new Warming(rig);
        for (double at = 0; at <= hours; at += 0.1 / 60) {
            double cell = ROOM + body.applyAsDouble(at);
            warming.take(scan(at, cell, cell + over.applyAsDouble(at), special, cell + there.applyAsDouble(at)));
        }
        return warming;
    }

    @Test
    void the_interval_covers_the_end_whatever_the_two_clocks_are() {
        Random random = new Random(5);
        Channel joint = rig.channels(Role.BAR).get(2);
        int inside = 0;
        for (int i = 0; i < 200; i++) {
            double slow = 1 + 3 * random.nextDouble();
            double fast = (2 + 10 * random.nextDouble()) / 60;
            double warms = 4 + 16 * random.nextDouble();
            double over = 1 + 10 * random.nextDouble();
            double end = 1 + 2 * random.nextDouble();
            double seen = Math.max(0.2, 0.2 * end);
            Warming warming = after(seen, h -> settling(warms, slow, h), _ -> 0, joint, h -> settling(over, fast, h));

            Ahead ahead = warming.nearest(false, 1, Math.round((end - seen) * 3600e9), Optional.empty()).orElseThrow();

            double truth = ROOM + settling(warms, slow, end) + settling(over, fast, end);
            assertThat(ahead.where()).isEqualTo(joint);
            inside += ahead.low() <= truth && truth <= ahead.high() ? 1 : 0;
        }
        assertThat(inside).as("of 200").isGreaterThanOrEqualTo(195);
    }

    @Test
    void the_beginning_of_a_long_rise_is_no_plateau() {
        Warming warming = after(0.5, h -> settling(15, 2, h), _ -> 0, rig.channels(Role.BODY).getFirst(), _ -> 0);

        Ahead ahead = warming.nearest(false, 1, Math.round(2 * 3600e9), Optional.empty()).orElseThrow();

        assertThat(ahead.celsius()).as("far above the 23.3 degrees of now").isGreaterThan(27);
        assertThat(ahead.low()).as("nobody knows how full the cell is: half of its heat may go, and no more").isGreaterThan(23);
        assertThat(ahead.high()).isGreaterThan(ROOM + settling(15, 2, 2.5));
    }

    @Test
    void a_joint_that_will_be_too_hot_is_told_of_an_hour_before() {
        Channel joint = rig.channels(Role.BAR).get(4);
        Warming warming = after(0.5, h -> settling(30, 2, h), _ -> 0.5, joint, h -> settling(22, 0.1, h));

        Ahead ahead = warming.nearest(false, 1.3, Math.round(3600e9), Optional.empty()).orElseThrow();

        assertThat(ahead.where()).isEqualTo(joint);
        assertThat(ahead.crosses()).isTrue();
        double met = met(ahead.limit(), h -> ROOM + settling(30, 2, h) + settling(22, 0.1, h));
        assertThat(ahead.earliestNanos().orElseThrow() / 3600e9).as("from now").isLessThan(met - 0.5);
        assertThat(ahead.latestNanos().orElse(ahead.leftNanos()) / 3600e9).isGreaterThan(met - 0.5);
        assertThat(AheadWords.of(rig, ahead)).matches(".*trips at 5\\d °C: reaches that between 0:\\d\\d and \\d:\\d\\d from now, .*");
        assertThat(ahead.limit()).as("35 K over the room, less the probe's uncertainty").isEqualTo(ROOM + 35 - joint.offsetU(), within(1e-9));
    }

    /** Hours since the beginning at which a curve is at a limit. */
    private static double met(double limit, DoubleUnaryOperator celsius) {
        double hours = 0;
        while (celsius.applyAsDouble(hours) < limit) {
            hours += 0.001;
        }
        return hours;
    }

    @Test
    void what_is_far_below_its_limit_says_no_time_and_the_time_that_was_told_comes_nearer() {
        Warming cool = after(0.5, h -> settling(6, 2, h), _ -> 0, rig.channels(Role.BODY).getFirst(), _ -> 0);
        Ahead never = cool.nearest(false, 1, Math.round(1800e9), Optional.empty()).orElseThrow();
        Ahead soon = new Ahead(never.where(), 60, 50, 70, 55, 7200_000_000_000L, OptionalLong.of(1200_000_000_000L), OptionalLong.empty());

        assertThat(never.mayCross() || never.crosses()).isFalse();
        assertThat(AheadWords.of(rig, never)).doesNotContain("from now");
        assertThat(soon.crosses()).as("more likely than not").isTrue();
        assertThat(soon.after(600_000_000_000L, 6600_000_000_000L).earliestNanos()).hasValue(600_000_000_000L);
        assertThat(AheadWords.of(rig, soon)).endsWith("trips at 55 °C: reaches that between 0:20 and 2:00 from now, or not before the end");
    }

    @Test
    void nothing_is_said_before_ten_minutes_or_of_what_cannot_be_read() {
        Channel body = rig.channels(Role.BODY).getFirst();
        assertThat(after(0.1, _ -> 0, _ -> 0, body, _ -> 0).nearest(false, 1, 1, Optional.empty())).isEmpty();

        Warming blind = new Warming(rig);
        for (int i = 0; i < 40; i++) {
            long nanos = i * 30_000_000_000L;
            Reading none = new Reading.Failed(Failure.NO_ANSWER, nanos);
            blind.take(new Scan(i, nanos, rig.channels().stream().map(_ -> none).toList()));
        }
        assertThat(blind.nearest(false, 1, 1, Optional.empty())).isEqualTo(Optional.empty());
    }

    @Test
    void a_step_that_begins_starts_anew() {
        Channel body = rig.channels(Role.BODY).getFirst();
        Warming warming = after(0.5, h -> 10 * h, _ -> 0, body, _ -> 0);
        warming.forget();
        assertThat(warming.nearest(true, 1, 1, Optional.empty())).isEmpty();
    }
}
