package rigwarden.findings.number;

import java.util.List;

/**
 * Reference functions of thermocouples, both ways (ITS-90; NIST Monograph 175, IEC 60584-1): °C to mV by the direct
 * polynomials, mV to °C by the inverse ones and then by Newton's method on the direct, so that both ways agree.
 */
public final class Thermocouple {
    /** Type K. */
    public static final Thermocouple K = new Thermocouple(List.of(
            new Piece(-270.0, 0.0,
                    0.000000000000e0, 0.394501280250e-1, 0.236223735980e-4, -0.328589067840e-6, -0.499048287770e-8,
                    -0.675090591730e-10, -0.574103274280e-12, -0.310888728940e-14, -0.104516093650e-16,
                    -0.198892668780e-19, -0.163226974860e-22),
            new Piece(0.0, 1372.0,
                    -0.176004136860e-1, 0.389212049750e-1, 0.185587700320e-4, -0.994575928740e-7, 0.318409457190e-9,
                    -0.560728448890e-12, 0.560750590590e-15, -0.320207200030e-18, 0.971511471520e-22,
                    -0.121047212750e-25)), List.of(
            new Piece(-5.891, 0.0,
                    0.0000000e0, 2.5173462e1, -1.1662878e0, -1.0833638e0, -8.9773540e-1, -3.7342377e-1, -8.6632643e-2,
                    -1.0450598e-2, -5.1920577e-4),
            new Piece(0.0, 20.644,
                    0.000000e0, 2.508355e1, 7.860106e-2, -2.503131e-1, 8.315270e-2, -1.228034e-2, 9.804036e-4,
                    -4.413030e-5, 1.057734e-6, -1.052755e-8),
            new Piece(20.644, 54.886,
                    -1.318058e2, 4.830222e1, -1.646031e0, 5.464731e-2, -9.650715e-4, 8.802193e-6, -3.110810e-8)));
    /** Type T. */
    public static final Thermocouple T = new Thermocouple(List.of(
            new Piece(-270.0, 0.0,
                    0.000000000000e0, 0.387481063640e-1, 0.441944343470e-4, 0.118443231050e-6, 0.200329735540e-7,
                    0.901380195590e-9, 0.226511565930e-10, 0.360711542050e-12, 0.384939398830e-14, 0.282135219250e-16,
                    0.142515947790e-18, 0.487686622860e-21, 0.107955392700e-23, 0.139450270620e-26, 0.797951539270e-30),
            new Piece(0.0, 400.0,
                    0.000000000000e0, 0.387481063640e-1, 0.332922278800e-4, 0.206182434040e-6, -0.218822568460e-8,
                    0.109968809280e-10, -0.308157587720e-13, 0.454791352900e-16, -0.275129016730e-19)), List.of(
            new Piece(-5.603, 0.0,
                    0.0000000e0, 2.5949192e1, -2.1316967e-1, 7.9018692e-1, 4.2527777e-1, 1.3304473e-1, 2.0241446e-2,
                    1.2668171e-3),
            new Piece(0.0, 20.872,
                    0.000000e0, 2.592800e1, -7.602961e-1, 4.637791e-2, -2.165394e-3, 6.048144e-5, -7.293422e-7)));
    /** Type J. */
    public static final Thermocouple J = new Thermocouple(List.of(
            new Piece(-210.0, 760.0,
                    0.000000000000e0, 0.503811878150e-1, 0.304758369300e-4, -0.856810657200e-7, 0.132281952950e-9,
                    -0.170529583370e-12, 0.209480906970e-15, -0.125383953360e-18, 0.156317256970e-22),
            new Piece(760.0, 1200.0,
                    0.296456256810e3, -0.149761277860e1, 0.317871039240e-2, -0.318476867010e-5, 0.157208190040e-8,
                    -0.306913690560e-12)), List.of(
            new Piece(-8.095, 0.0,
                    0.0000000e0, 1.9528268e1, -1.2286185e0, -1.0752178e0, -5.9086933e-1, -1.7256713e-1, -2.8131513e-2,
                    -2.3963370e-3, -8.3823321e-5),
            new Piece(0.0, 42.919,
                    0.000000e0, 1.978425e1, -2.001204e-1, 1.036969e-2, -2.549687e-4, 3.585153e-6, -5.344285e-8,
                    5.099890e-10),
            new Piece(42.919, 69.553,
                    -3.11358187e3, 3.00543684e2, -9.94773230e0, 1.70276630e-1, -1.43033468e-3, 4.73886084e-6)));
    /** Type N. */
    public static final Thermocouple N = new Thermocouple(List.of(
            new Piece(-270.0, 0.0,
                    0.000000000000e0, 0.261591059620e-1, 0.109574842280e-4, -0.938411115540e-7, -0.464120397590e-10,
                    -0.263033577160e-11, -0.226534380030e-13, -0.760893007910e-16, -0.934196678350e-19),
            new Piece(0.0, 1300.0,
                    0.000000000000e0, 0.259293946010e-1, 0.157101418800e-4, 0.438256272370e-7, -0.252611697940e-9,
                    0.643118193390e-12, -0.100634715190e-14, 0.997453389920e-18, -0.608632456070e-21,
                    0.208492293390e-24, -0.306821961510e-28)), List.of(
            new Piece(-3.99, 0.0,
                    0.0000000e0, 3.8436847e1, 1.1010485e0, 5.2229312e0, 7.2060525e0, 5.8488586e0, 2.7754916e0,
                    7.7075166e-1, 1.1582665e-1, 7.3138868e-3),
            new Piece(0.0, 20.613,
                    0.00000e0, 3.86896e1, -1.08267e0, 4.70205e-2, -2.12169e-6, -1.17272e-4, 5.39280e-6, -7.98156e-8),
            new Piece(20.613, 47.513,
                    1.972485e1, 3.300943e1, -3.915159e-1, 9.855391e-3, -1.274371e-4, 7.767022e-7)));

    /** All that there are. */
    public static final List<Thermocouple> ALL = List.of(K, T, J, N);

    /** The exponential term of type K above 0 °C: a0 exp(a1 (t − a2)²). */
    private static final double[] HUMP = {0.1185976, -0.1183432e-3, 126.9686};
    private static final int NEWTON_STEPS = 4;

    private final List<Piece> direct;
    private final List<Piece> inverse;

    private Thermocouple(List<Piece> direct, List<Piece> inverse) {
        this.direct = direct;
        this.inverse = inverse;
    }

    /** A polynomial and where it holds. */
    private record Piece(double low, double high, double... coefficients) {
        double at(double x) {
            double sum = 0;
            for (int i = coefficients.length - 1; i >= 0; i--) {
                sum = sum * x + coefficients[i];
            }
            return sum;
        }

        double slope(double x) {
            double sum = 0;
            for (int i = coefficients.length - 1; i > 0; i--) {
                sum = sum * x + i * coefficients[i];
            }
            return sum;
        }
    }

    /**
     * Electromotive force against a junction at 0 °C, mV.
     *
     * @param celsius within the range of the direct functions
     * @throws IllegalArgumentException outside it
     */
    public double millivolts(double celsius) {
        Piece piece = piece(direct, celsius, "°C");
        return piece.at(celsius) + (hump(celsius) ? HUMP[0] * Math.exp(HUMP[1] * Math.pow(celsius - HUMP[2], 2)) : 0);
    }

    /** How much it grows, mV/K. */
    public double millivoltsPerKelvin(double celsius) {
        double more = hump(celsius)
                ? 2 * HUMP[1] * (celsius - HUMP[2]) * HUMP[0] * Math.exp(HUMP[1] * Math.pow(celsius - HUMP[2], 2))
                : 0;
        return piece(direct, celsius, "°C").slope(celsius) + more;
    }

    /** Temperature by the published inverse polynomial alone, within its published error of a few hundredths of a kelvin, °C. */
    public double celsiusByPolynomial(double millivolts) {
        return piece(inverse, millivolts, "mV").at(millivolts);
    }

    /**
     * Temperature, °C, such that {@link #millivolts} gives it back.
     *
     * @throws IllegalArgumentException outside the range of the inverse functions
     */
    public double celsius(double millivolts) {
        double celsius = celsiusByPolynomial(millivolts);
        for (int i = 0; i < NEWTON_STEPS; i++) {
            celsius = Math.clamp(celsius - (millivolts(celsius) - millivolts) / millivoltsPerKelvin(celsius),
                    direct.getFirst().low(), direct.getLast().high());
        }
        return celsius;
    }

    /** Temperature of the hot junction: the cold one is added as a voltage, not as degrees, °C. */
    public double celsius(double measuredMillivolts, double coldCelsius) {
        return celsius(measuredMillivolts + millivolts(coldCelsius));
    }

    private boolean hump(double celsius) {
        return K.equals(this) && celsius > 0;
    }

    private static Piece piece(List<Piece> pieces, double x, String unit) {
        for (Piece piece : pieces) {
            if (x >= piece.low() && x <= piece.high()) {
                return piece;
            }
        }
        throw new IllegalArgumentException(x + " " + unit + " is outside " + pieces.getFirst().low() + "…"
                + pieces.getLast().high() + " " + unit);
    }
}
