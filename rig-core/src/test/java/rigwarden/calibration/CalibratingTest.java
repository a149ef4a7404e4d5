package rigwarden.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** From points to a calibration, and every reason why there is none. */
class CalibratingTest {
    private static final Rig RIG = ((Read.Sound<Rig>) RigFile.bare(Path.of("..", "hardware", "rigs", "one-cell.toml"))).value();
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 26);
    private static final MeterStatement METER =
            new MeterStatement("bench meter", 0.0005, 3, 0.001, 0, 60, LocalDate.of(2026, 3, 1), 365);
    private static final MeterStatement MILLIVOLTS =
            new MeterStatement("bench meter", 0.0002, 3, 1e-6, 0, 0.1, LocalDate.of(2026, 3, 1), 365);

    private static Point point(double reads, double shown) {
        return new Point(reads, 0.01, 50, shown);
    }

    private static Result of(String channel, MeterStatement meter, Point... points) {
        return new Calibrating(RIG, channel, meter, Optional.empty()).of(List.of(points), TODAY, 365, Calibrating.Seen.NOTHING);
    }

    private static ChannelCalibration found(Result result) {
        return switch (result) {
            case Result.Found found -> found.calibration();
            case Result.Refused refused -> throw new AssertionError(refused.words());
        };
    }

    private static String refused(Result result) {
        return switch (result) {
            case Result.Found found -> throw new AssertionError("found " + found.calibration().text());
            case Result.Refused refused -> refused.words();
        };
    }

    @Test
    void two_points_take_out_a_shunt_that_is_off_and_a_chip_that_is_not_at_zero() {
        ChannelCalibration found = found(of("current_a", METER, point(5, 5 * 1.002 + 0.02), point(50, 50 * 1.002 + 0.02)));

        assertThat(found.gain()).isEqualTo(1.002, within(1e-9));
        assertThat(found.offset()).isEqualTo(0.02, within(1e-9));
        assertThat(found.expires()).isEqualTo(LocalDate.of(2027, 11, 26));
    }

    @Test
    void what_the_meter_states_goes_into_the_result_whole_however_many_points_there_are() {
        List<Point> many = new ArrayList<>();
        for (int i = 1; i <= 50; i++) {
            many.add(point(i, i));
        }
        Doubt two = found(of("current_a", METER, point(1, 1), point(50, 50))).doubt();
        Doubt fifty = found(of("current_a", METER, many.toArray(Point[]::new))).doubt();
        double stated = 2 / Math.sqrt(3) * Math.hypot(0.0005 * 50, 0.003);

        assertThat(fifty.expanded(50)).isGreaterThan(stated).isLessThan(two.expanded(50));
        assertThat(fifty.expanded(50)).isEqualTo(stated, within(0.02 * stated));
    }

    @Test
    void beyond_three_spans_the_doubt_has_a_term_of_its_own() {
        Doubt doubt = found(of("current_a", METER, point(0, 0), point(30, 30))).doubt();
        double shunt = Math.hypot(0.0025, 0.0005);

        assertThat(doubt.reachHigh()).isEqualTo(90, within(1e-9));
        assertThat(doubt.reachLow()).isEqualTo(-60, within(1e-9));
        assertThat(doubt.beyond(89)).isZero();
        assertThat(doubt.beyond(-60)).isEqualTo(0, within(1e-9));
        assertThat(doubt.beyond(120)).isEqualTo(30 * shunt, within(1e-9));
        assertThat(doubt.beyond(-100)).isEqualTo(40 * shunt, within(1e-9));
        assertThat(doubt.expanded(120)).isGreaterThan(1.2 * Math.hypot(2 * doubt.line(120), 2 / Math.sqrt(3) * 120 * 0.0005));
    }

    @Test
    void the_two_numbers_that_the_run_file_keeps_are_never_less_than_the_doubt_within_reach() {
        Doubt doubt = found(of("cell_01_v", new MeterStatement("m", 0.0002, 3, 0.0001, 0, 6, LocalDate.of(2026, 3, 1), 365),
                point(2.6, 2.604), point(3.6, 3.603))).doubt();

        for (double volts = doubt.reachLow(); volts <= doubt.reachHigh(); volts += 0.01) {
            assertThat(Math.hypot(doubt.gainU() * volts, doubt.offsetU())).isGreaterThanOrEqualTo(doubt.expanded(volts) * (1 - 1e-12));
        }
    }

    @Test
    void a_shunt_with_a_certificate_is_calibrated_by_its_millivolts() {
        double ohms = 0.0005006;
        Calibrating how = new Calibrating(RIG, "current_a", MILLIVOLTS, Optional.of(new ShuntCertificate(ohms, 1e-7)));
        ChannelCalibration found = found(how.of(List.of(point(10, 0.0005 * 10 * 1.0003), point(100, 0.0005 * 100 * 1.0003)), TODAY, 365,
                new Calibrating.Seen(OptionalDouble.of(24), OptionalLong.empty())));

        assertThat(found.gain()).isEqualTo(0.0005 * 1.0003 / ohms, within(1e-9));
        assertThat(found.doubt().certificateU()).isEqualTo(1e-7 / 2 / ohms, within(1e-12));
        assertThat(found.doubt().expanded(100)).isGreaterThan(100 * 1e-7 / ohms).isLessThan(0.05);
        assertThat(found.shuntCelsius()).hasValue(24);
        assertThat(found.text()).contains("[certificate]\nohms = " + ohms);
    }

    @Test
    void a_mistyped_point_is_named_and_not_averaged_away() {
        String words = refused(of("current_a", METER, point(5, 5), point(20, 20), point(30, 30.3), point(50, 50)));

        assertThat(words).startsWith("Point 3 shows 30.3000").contains("Take that point again");
    }

    @Test
    void what_cannot_be_is_refused_with_what_was_found_what_is_allowed_why_and_what_to_do() {
        assertThat(refused(of("current_a", METER, point(5, 5)))).startsWith("The points span 0.000").contains("Set values farther apart");
        assertThat(refused(of("current_a", METER, point(5, 5), point(5.005, 5.005)))).startsWith("The points span 0.005");
        assertThat(refused(of("current_a", METER, point(5, 5), point(70, 70)))).startsWith("Point 2 shows 70.0000").contains("range's end, 60.0000");
        assertThat(refused(of("current_a", METER, point(5, 5), point(50, 45)))).startsWith("The line's gain is 0.8889");
        assertThat(refused(of("current_a", METER, point(5, 10), point(50, 55)))).startsWith("The line's offset is 5");
    }

    @Test
    void a_meter_whose_statement_has_lapsed_calibrates_nothing() {
        MeterStatement old = new MeterStatement("bench meter", 0.0005, 3, 0.001, 0, 60, LocalDate.of(2025, 11, 25), 365);
        MeterStatement future = new MeterStatement("bench meter", 0.0005, 3, 0.001, 0, 60, LocalDate.of(2026, 11, 27), 365);

        assertThat(refused(of("current_a", old, point(5, 5), point(50, 50)))).startsWith("meter.calibrated is 2025-11-25");
        assertThat(refused(of("current_a", future, point(5, 5), point(50, 50)))).contains("a day that has been");
    }
}
