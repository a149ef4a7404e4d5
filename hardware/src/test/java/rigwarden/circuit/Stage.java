package rigwarden.circuit;

import java.io.IOException;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.random.RandomGenerator;

/**
 * One heartbeat stage, built from parts with their tolerances.
 *
 * @param words the parameters of its parts, as in {@code heartbeat.sub}
 * @param volts its supply, V
 * @param release share of the nominal coil current at which its relay lets go
 * @param celsius its temperature
 */
record Stage(String words, double volts, double release, double celsius) {
    private static final double CAPACITOR = 0.05;
    private static final double RESISTOR = 0.01;
    private static final double SUPPLY = 0.05;
    /** A coil's resistance: a tenth of its make, and 30 K either way. */
    private static final double COIL = 0.21;

    static Stage asDrawn() {
        return new Stage("", 12, 0.1, 27);
    }

    /** As drawn, with one part broken. */
    static Stage broken(String parameter) {
        return new Stage(parameter, 12, 0.1, 27);
    }

    /** Every part drawn from its tolerance; where extreme, each at one end of it. */
    static Stage drawn(RandomGenerator chance, boolean extreme) {
        DoubleUnaryOperator off = by -> by * (extreme ? (chance.nextBoolean() ? 1 : -1) : chance.nextDouble(-1, 1));
        double release = 0.2 + off.applyAsDouble(0.1);
        String words = String.format(Locale.ROOT,
                "cp=%.4gu ch=%.4gu rh=%.5gk rh2=%.5gk rtop=%.5gk rbot=%.5gk rf=%.5gk offset=%.3gm ratio=%.3g dis=%.3gn lagh=%.3gm releaseh=%.3g copper=%.3g",
                4.7 * (1 + off.applyAsDouble(CAPACITOR)), 2.2 * (1 + off.applyAsDouble(CAPACITOR)),
                487 * (1 + off.applyAsDouble(RESISTOR)), 487 * (1 + off.applyAsDouble(RESISTOR)),
                100 * (1 + off.applyAsDouble(RESISTOR)), 130 * (1 + off.applyAsDouble(RESISTOR)),
                150 * (1 + off.applyAsDouble(RESISTOR)), off.applyAsDouble(10), Math.pow(2, 0.5 + off.applyAsDouble(1.5)),
                4 * Math.pow(5, off.applyAsDouble(1)), 5 + off.applyAsDouble(3), release, 1 + off.applyAsDouble(COIL));
        return new Stage(words, 12 * (1 + off.applyAsDouble(SUPPLY)), release, 20 + off.applyAsDouble(30));
    }

    /**
     * What the coil feed behind this stage does; the feed is 24 V while the stage holds.
     *
     * @param seconds how long it is looked at
     * @param measures lines of ngspice on {@code v(feed)}
     */
    Map<String, Double> run(Beats beats, double seconds, String measures) throws IOException, InterruptedException {
        return Ngspice.lines(String.format(Locale.ROOT, """
                %1$s
                Vvs vs 0 %2$.4f
                X1 pin vs hold pos posb heartbeat %3$s
                Vf full 0 24
                X2 full half pos make release=%4$.3f
                X3 half feed posb make release=%4$.3f
                R1 feed 0 4k7
                .options temp=%5$.1f
                .tran 1m %6$.3f 0 2m uic
                %7$s""", beats.source("pin"), volts, words, release, celsius, seconds, measures));
    }
}
