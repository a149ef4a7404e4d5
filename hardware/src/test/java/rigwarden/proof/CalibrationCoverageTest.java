package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.calibration.MeterStatement;
import rigwarden.calibration.Point;
import rigwarden.calibration.Result;
import rigwarden.calibration.ShuntCertificate;
import rigwarden.emulated.Rehearsal;
import rigwarden.emulated.RehearsedCalibration;
import rigwarden.findings.StepFinding;
import rigwarden.findings.Tally;
import rigwarden.rig.Calibratable;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Rig;
import rigwarden.run.Event;

/**
 * Whether what a calibration states is honest: over specimens of the rig and of the reference meter, both drawn from what they state,
 * does the corrected reading's uncertainty cover the truth, within the points and beyond them, and is it no wider than it must be?
 */
class CalibrationCoverageTest {
    private static final int SPECIMENS = Integer.getInteger("rigwarden.specimens", 120);
    private static final int NIGHTS = Integer.getInteger("rigwarden.nights", 3);
    private static final int SCANS = 30;
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 26);
    private static final LocalDate BEFORE = LocalDate.of(2026, 3, 1);
    private static final MeterStatement AMPS = new MeterStatement("meter of a rehearsal", 0.0005, 3, 0.001, 0, 60, BEFORE, 365);
    private static final MeterStatement VOLTS = new MeterStatement("meter of a rehearsal", 0.0002, 3, 0.0001, 0, 6, BEFORE, 365);
    private static final MeterStatement MILLIVOLTS = new MeterStatement("meter of a rehearsal", 0.0003, 5, 1e-6, 0, 0.1, BEFORE, 365);
    private static final ShuntCertificate CERTIFIED = new ShuntCertificate(0.0005, 2.5e-7);

    /** One specimen at one true value. */
    private record Seen(double truth, double error, double expanded, double uncorrected) {
        boolean inside() {
            return Math.abs(error) <= expanded;
        }
    }

    private static List<Seen> specimen(String channel, MeterStatement meter, Optional<ShuntCertificate> certificate, double[] at,
            double[] asked, long seed) {
        try {
            Rig rig = Bench.rig();
            RehearsedCalibration bench = new RehearsedCalibration(rig, channel, meter, certificate, seed);
            ChannelCalibration found = calibrated(rig, bench, meter, at, seed);
            return Arrays.stream(asked).mapToObj(truth -> {
                double reads = bench.read(truth, SCANS).reads();
                double value = found.corrected(reads);
                return new Seen(truth, value - truth, found.doubt().expanded(value), reads - truth);
            }).toList();
        } catch (BusFailure e) {
            throw new AssertionError(e);
        }
    }

    private static ChannelCalibration calibrated(Rig rig, RehearsedCalibration bench, MeterStatement meter, double[] at, long seed) {
        List<Point> points = Arrays.stream(at).mapToObj(truth -> bench.point(truth, SCANS)).toList();
        return switch (bench.calibrating(rig, meter).of(points, TODAY, 365, bench.seen(seed))) {
            case Result.Found found -> found.calibration();
            case Result.Refused refused -> throw new AssertionError("seed " + seed + ": " + refused.words());
        };
    }

    private static void covered(String channel, MeterStatement meter, Optional<ShuntCertificate> certificate, double[] at,
            double[] asked) {
        List<Seen> all = LongStream.rangeClosed(1, SPECIMENS).parallel()
                .mapToObj(seed -> specimen(channel, meter, certificate, at, asked, seed)).flatMap(List::stream).toList();
        int least = new BinomialDistribution(SPECIMENS, 0.9545).inverseCumulativeProbability(0.01);
        for (double truth : asked) {
            List<Seen> here = all.stream().filter(seen -> seen.truth() == truth).toList();
            long inside = here.stream().filter(Seen::inside).count();
            double[] errors = here.stream().mapToDouble(seen -> Math.abs(seen.error())).sorted().toArray();
            double[] before = here.stream().mapToDouble(seen -> Math.abs(seen.uncorrected())).sorted().toArray();
            int rank = (int) Math.ceil(0.95 * errors.length) - 1;
            double widest = here.stream().mapToDouble(Seen::expanded).max().orElseThrow();
            System.out.printf("%s%s at %s: inside %d of %d (least %d), U %.5f, 95 %% of errors within %.5f (before %.5f), U ÷ that %.2f%n", channel,
                    certificate.isPresent() ? " by certificate" : "", truth, inside, SPECIMENS, least, widest, errors[rank], before[rank],
                    widest / errors[rank]);
            assertThat(inside).as("inside at " + truth).isGreaterThanOrEqualTo(least);
            assertThat(errors[rank]).as("better than before at " + truth).isLessThan(before[rank]);
            assertThat(widest).as("no wider than it must be at " + truth).isLessThanOrEqualTo(1.5 * errors[rank]);
        }
    }

    @Test
    void a_current_calibrated_by_three_points_is_covered_within_them_and_beyond() {
        covered(Calibratable.CURRENT, AMPS, Optional.empty(), new double[] {5, 20, 45}, new double[] {10, 45, 100, -60});
    }

    @Test
    void a_current_calibrated_by_its_shunts_certificate_is_covered() {
        covered(Calibratable.CURRENT, MILLIVOLTS, Optional.of(CERTIFIED), new double[] {10, 100}, new double[] {20, 100, -50});
    }

    @Test
    void a_tap_calibrated_by_two_points_is_covered() {
        covered("cell_01_v", VOLTS, Optional.empty(), new double[] {2.5, 3.6}, new double[] {2.5, 3.3, 3.65});
    }

    @Test
    void a_calibrated_shunt_shrinks_the_uncertainty_of_a_capacity_and_still_covers_the_truth() {
        List<Charged> all = LongStream.rangeClosed(1, NIGHTS).parallel().mapToObj(CalibrationCoverageTest::night).toList();
        long inside = all.stream().filter(one -> one.calibrated.chargeAmpHours().covers(one.truth)).count();
        int least = new BinomialDistribution(NIGHTS, 0.9545).inverseCumulativeProbability(0.01);
        all.forEach(one -> System.out.printf("truth %.4f Ah, without %.4f ± %.4f, calibrated %.4f ± %.4f%n", one.truth,
                one.bare.chargeAmpHours().value(), one.bare.chargeAmpHours().expanded(), one.calibrated.chargeAmpHours().value(),
                one.calibrated.chargeAmpHours().expanded()));

        assertThat(inside).as("inside").isGreaterThanOrEqualTo(least);
        assertThat(all).allSatisfy(one -> assertThat(one.calibrated.chargeAmpHours().expanded())
                .isLessThan(0.4 * one.bare.chargeAmpHours().expanded()));
    }

    private record Charged(double truth, StepFinding bare, StepFinding calibrated) {}

    /** The first discharge of a night, its scans read with the calibration and, their codes taken again, without it. */
    private static Charged night(long seed) {
        try {
            Rig bare = Bench.rig();
            RehearsedCalibration bench = new RehearsedCalibration(bare, Calibratable.CURRENT, AMPS, Optional.empty(), seed);
            Rig rig = bare.calibrated(List.of(calibrated(bare, bench, AMPS, new double[] {5, 20, 50}, seed)));
            Tally with = new Tally(rig);
            Tally without = new Tally(bare);
            Rehearsal rehearsal = new Rehearsal(rig, Bench.night(), seed, List.of(), (scan, _, _, _) -> {
                with.scan(scan);
                without.scan(Codes.read(bare, scan));
            });
            return discharged(rehearsal, with, without);
        } catch (BusFailure e) {
            throw new AssertionError(e);
        }
    }

    private static Charged discharged(Rehearsal rehearsal, Tally with, Tally without) {
        double began = 0;
        while (!rehearsal.over()) {
            for (Event event : rehearsal.scan()) {
                if (event instanceof Event.StepEnded ended) {
                    with.ended(ended.by(), ended.settled(), ended.account());
                    without.ended(ended.by(), ended.settled(), ended.account());
                    if (with.steps().getLast().kind().equals("discharge")) {
                        return new Charged((rehearsal.rig().world().coulombs() - began) / 3600, without.steps().getLast(),
                                with.steps().getLast());
                    }
                } else if (event instanceof Event.StepBegun begun) {
                    began = rehearsal.rig().world().coulombs();
                    with.begun(begun.step(), begun.kind());
                    without.begun(begun.step(), begun.kind());
                }
            }
        }
        throw new AssertionError("no discharge: " + rehearsal.loop().standing().state());
    }
}
