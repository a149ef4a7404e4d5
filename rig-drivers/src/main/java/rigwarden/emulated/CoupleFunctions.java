package rigwarden.emulated;

/** Coefficients of the direct functions, mV against °C (NIST Monograph 175, the same in IEC 60584-1:2013 annex A). */
final class CoupleFunctions {
    private static final double[] K_BELOW = {
        0.0, 0.039450128025, 2.3622373598e-05, -3.2858906784e-07, -4.9904828777e-09, -6.7509059173e-11,
        -5.7410327428e-13, -3.1088872894e-15, -1.0451609365e-17, -1.9889266878e-20, -1.6322697486e-23
    };
    private static final double[] K_ABOVE = {
        -0.017600413686, 0.038921204975, 1.8558770032e-05, -9.9457592874e-08, 3.1840945719e-10,
        -5.6072844889e-13, 5.6075059059e-16, -3.2020720003e-19, 9.7151147152e-23, -1.2104721275e-26
    };
    private static final double[] T_BELOW = {
        0.0, 0.038748106364, 4.4194434347e-05, 1.1844323105e-07, 2.0032973554e-08, 9.0138019559e-10,
        2.2651156593e-11, 3.6071154205e-13, 3.8493939883e-15, 2.8213521925e-17, 1.4251594779e-19,
        4.8768662286e-22, 1.079553927e-24, 1.3945027062e-27, 7.9795153927e-31
    };
    private static final double[] T_ABOVE = {
        0.0, 0.038748106364, 3.329222788e-05, 2.0618243404e-07, -2.1882256846e-09, 1.0996880928e-11,
        -3.0815758772e-14, 4.547913529e-17, -2.7512901673e-20
    };
    private static final double[] J_LOW = {
        0.0, 0.050381187815, 3.047583693e-05, -8.568106572e-08, 1.3228195295e-10, -1.7052958337e-13,
        2.0948090697e-16, -1.2538395336e-19, 1.5631725697e-23
    };
    private static final double[] J_HIGH = {
        296.45625681, -1.4976127786, 0.0031787103924, -3.1847686701e-06, 1.5720819004e-09, -3.0691369056e-13
    };
    private static final double[] N_BELOW = {
        0.0, 0.026159105962, 1.0957484228e-05, -9.3841111554e-08, -4.6412039759e-11, -2.6303357716e-12,
        -2.2653438003e-14, -7.6089300791e-17, -9.3419667835e-20
    };
    private static final double[] N_ABOVE = {
        0.0, 0.025929394601, 1.571014188e-05, 4.3825627237e-08, -2.5261169794e-10, 6.4311819339e-13,
        -1.0063471519e-15, 9.9745338992e-19, -6.0863245607e-22, 2.0849229339e-25, -3.0682196151e-29
    };
    private static final double J_SPLIT = 760;
    private static final double[] K_HILL = {0.1185976, -0.1183432e-3, 126.9686};

    private CoupleFunctions() {}

    static double k(double celsius) {
        if (celsius <= 0) {
            return sum(K_BELOW, celsius);
        }
        double beside = celsius - K_HILL[2];
        return sum(K_ABOVE, celsius) + K_HILL[0] * Math.exp(K_HILL[1] * beside * beside);
    }

    static double t(double celsius) {
        return sum(celsius < 0 ? T_BELOW : T_ABOVE, celsius);
    }

    static double j(double celsius) {
        return sum(celsius < J_SPLIT ? J_LOW : J_HIGH, celsius);
    }

    static double n(double celsius) {
        return sum(celsius < 0 ? N_BELOW : N_ABOVE, celsius);
    }

    private static double sum(double[] coefficients, double celsius) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * celsius + coefficients[i];
        }
        return sum;
    }
}
