package rigwarden.findings;

/**
 * The heat that comes with the current and goes with it when it turns: I T dU/dT, by the state of charge.
 *
 * @param startCharge state of charge when the step began, 0…1
 * @param ampHours capacity of a cell
 */
public record Reversible(double startCharge, double ampHours) {
    /** dU/dT by tenths of the charge, V/K (A. Kawakita de Souza 2020, the table in the open data's entropy_dOCVdT.csv; MIT). */
    private static final double[] VOLTS_PER_KELVIN = {-3.64e-4, -4.65e-4, -1.66e-4, -1.046e-4, -5.14e-5, 7.61e-5, 1.083e-4, 1.237e-4,
        1.17e-5, 4.01e-5, 2.24e-4};
    private static final double KELVIN = 298.15;
    /** Heat capacity of a large cell, J/K for each Ah (model page: 2.0 kg of 1.05 kJ/(kg K) for 105 Ah). */
    private static final double JOULES_PER_KELVIN_AH = 20;

    double joulesPerKelvin() {
        return JOULES_PER_KELVIN_AH * ampHours;
    }

    /** By point, W, warming positive; the charge follows the current from point to point. */
    double[] watts(double[] hours, double[] amps) {
        double[] charge = charge(hours, amps);
        double[] watts = new double[hours.length];
        for (int i = 0; i < hours.length; i++) {
            watts[i] = amps[i] * KELVIN * voltsPerKelvin(charge[i]);
        }
        return watts;
    }

    /** The same as what it does to a body that loses nothing, K/h. */
    double[] kelvinPerHour(double[] hours, double[] amps) {
        double[] all = watts(hours, amps);
        for (int i = 0; i < all.length; i++) {
            all[i] *= 3600 / joulesPerKelvin();
        }
        return all;
    }

    /** State of charge by point, in the middle between it and the one before. */
    double[] charge(double[] hours, double[] amps) {
        double[] all = new double[hours.length];
        double charge = startCharge;
        double before = 0;
        for (int i = 0; i < hours.length; i++) {
            double half = amps[i] * (hours[i] - before) / ampHours / 2;
            all[i] = charge + half;
            charge += 2 * half;
            before = hours[i];
        }
        return all;
    }

    private static double voltsPerKelvin(double charge) {
        double place = Math.clamp(charge, 0, 1) * (VOLTS_PER_KELVIN.length - 1);
        int below = Math.min((int) place, VOLTS_PER_KELVIN.length - 2);
        return VOLTS_PER_KELVIN[below] + (place - below) * (VOLTS_PER_KELVIN[below + 1] - VOLTS_PER_KELVIN[below]);
    }
}
