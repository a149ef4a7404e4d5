package rigwarden.chip.max31855;

/**
 * What a couple gives, and what the chip of that letter takes it for. Polynomials of NIST Monograph 175, tables 7.3.1
 * and 9.3.1 (the same in IEC 60584-1): E in mV, t in °C, reference junction at 0 °C.
 */
public enum Couple {
    /** NiCr and NiAl. */
    K(0.041276, 0.1185976),
    /** Cu and CuNi. */
    T(0.05218, 0);

    private static final double[] K_BELOW = {0, 0.394501280250e-1, 0.236223735980e-4, -0.328589067840e-6,
        -0.499048287770e-8, -0.675090591730e-10, -0.574103274280e-12, -0.310888728940e-14, -0.104516093650e-16,
        -0.198892668780e-19, -0.163226974860e-22};
    private static final double[] K_ABOVE = {-0.176004136860e-1, 0.389212049750e-1, 0.185587700320e-4,
        -0.994575928740e-7, 0.318409457190e-9, -0.560728448890e-12, 0.560750590590e-15, -0.320207200030e-18,
        0.971511471520e-22, -0.121047212750e-25};
    private static final double[] T_BELOW = {0, 0.387481063640e-1, 0.441944343470e-4, 0.118443231050e-6,
        0.200329735540e-7, 0.901380195590e-9, 0.226511565930e-10, 0.360711542050e-12, 0.384939398830e-14,
        0.282135219250e-16, 0.142515947790e-18, 0.487686622860e-21, 0.107955392700e-23, 0.139450270620e-26,
        0.797951539270e-30};
    private static final double[] T_ABOVE = {0, 0.387481063640e-1, 0.332922278800e-4, 0.206182434040e-6,
        -0.218822568460e-8, 0.109968809280e-10, -0.308157587720e-13, 0.454791352900e-16, -0.275129016730e-19};
    private static final double HUMP_WIDTH = -0.1183432e-3;
    private static final double HUMP_AT_C = 126.9686;

    /** Ends of the search, °C: the polynomials hold and rise between them. */
    private static final double LOWEST_C = -200;
    private static final double HIGHEST_C = 400;
    /** Halvings that bring 600 K below a micro-kelvin. */
    private static final int HALVINGS = 30;

    private final double chipMillivolts;
    private final double humpMillivolts;

    Couple(double chipMillivolts, double humpMillivolts) {
        this.chipMillivolts = chipMillivolts;
        this.humpMillivolts = humpMillivolts;
    }

    private double[] factors(boolean above) {
        return switch (this) {
            case K -> above ? K_ABOVE : K_BELOW;
            case T -> above ? T_ABOVE : T_BELOW;
        };
    }

    /** Voltage of the couple over a junction at 0 °C, mV. */
    public double millivolts(double celsius) {
        boolean above = celsius > 0;
        double[] factors = factors(above);
        double sum = 0;
        for (int i = factors.length - 1; i >= 0; i--) {
            sum = sum * celsius + factors[i];
        }
        double from = celsius - HUMP_AT_C;
        return above ? sum + humpMillivolts * Math.exp(HUMP_WIDTH * from * from) : sum;
    }

    /**
     * Temperature of the hot junction behind the chip's straight line of 41.276 or 52.18 µV/K (19-5793, table 1; from memory).
     *
     * @param saidCelsius what the chip says
     * @param coldCelsius its own temperature
     * @return °C
     */
    public double celsius(double saidCelsius, double coldCelsius) {
        double wanted = chipMillivolts * (saidCelsius - coldCelsius) + millivolts(coldCelsius);
        double low = LOWEST_C;
        double high = HIGHEST_C;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (millivolts(middle) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
