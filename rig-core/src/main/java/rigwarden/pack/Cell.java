package rigwarden.pack;

/** One cell's state and how it moves. Current is positive into the cell. */
final class Cell {
    private static final double REFERENCE_K = 298.15;
    private static final double COLD_K = 3700;
    private static final double WARM_K = 1000;
    private static final double LOOK_CHARGE = 2e-5;
    private static final double LOOK_CELSIUS = 0.02;

    final CellParameters parameters;
    double charge;
    double hysteresis;
    double fastVolts;
    double slowVolts;
    double bodyCelsius;
    double extraLeakAmps;
    double extraWatts;
    double extraKelvinPerSecond;

    private double ohms;
    private double fastOhms;
    private double slowOhms;
    private double lookedCharge = Double.NaN;
    private double lookedCelsius = Double.NaN;
    private double lastSeconds = Double.NaN;
    private double fastKeep;
    private double slowKeep;

    Cell(CellParameters parameters, double charge, double celsius) {
        this.parameters = parameters;
        this.charge = charge;
        this.bodyCelsius = celsius;
    }

    Cell copy() {
        Cell other = new Cell(parameters, charge, bodyCelsius);
        other.hysteresis = hysteresis;
        other.fastVolts = fastVolts;
        other.slowVolts = slowVolts;
        other.extraLeakAmps = extraLeakAmps;
        other.extraWatts = extraWatts;
        other.extraKelvinPerSecond = extraKelvinPerSecond;
        other.ohms = ohms;
        other.fastOhms = fastOhms;
        other.slowOhms = slowOhms;
        other.lookedCharge = lookedCharge;
        other.lookedCelsius = lookedCelsius;
        other.lastSeconds = lastSeconds;
        other.fastKeep = fastKeep;
        other.slowKeep = slowKeep;
        return other;
    }

    /** Series resistance now, Ω. */
    double ohms() {
        look();
        return ohms;
    }

    /** Resistances move slowly with charge and temperature: worked out again when either has moved a little. */
    private void look() {
        if (Math.abs(charge - lookedCharge) < LOOK_CHARGE && Math.abs(bodyCelsius - lookedCelsius) < LOOK_CELSIUS) {
            return;
        }
        double kelvin = bodyCelsius + 273.15;
        double k = bodyCelsius < 25 ? COLD_K : WARM_K;
        double a = Math.exp(k * (1 / kelvin - 1 / REFERENCE_K));
        double s = Math.clamp(charge, 0, 1);
        double b = 1 + 3 * Math.exp(-s / 0.03) + Math.exp(-(1 - s) / 0.02);
        ohms = parameters.ohms() * a * b;
        fastOhms = parameters.fastOhms() * a * b;
        slowOhms = parameters.slowOhms() * a * (1 + 30 * Math.exp(-s / 0.05) + 20 * Math.exp(-(1 - s) / 0.06));
        lookedCharge = charge;
        lookedCelsius = bodyCelsius;
    }

    /** Everything but the drop over the series resistance, V. */
    double emfVolts() {
        return restVolts() + fastVolts + slowVolts;
    }

    private double restVolts() {
        return OpenCircuit.LFP.volts(charge)
                + (bodyCelsius - 25) * OpenCircuit.LFP.voltsPerKelvin(charge)
                + parameters.hysteresisVolts() * hysteresis;
    }

    /**
     * Moves on under a constant current.
     *
     * @return heat made in the body, W
     */
    double move(double amps, double seconds) {
        look();
        if (seconds != lastSeconds) {
            lastSeconds = seconds;
            fastKeep = Math.exp(-seconds / parameters.fastSeconds());
            slowKeep = Math.exp(-seconds / parameters.slowSeconds());
        }
        double entropy = OpenCircuit.LFP.voltsPerKelvin(charge);
        double over = fastVolts + slowVolts + amps * ohms + parameters.hysteresisVolts() * hysteresis;
        double watts = amps * over + amps * (bodyCelsius + 273.15) * entropy + extraWatts;
        fastVolts = amps * fastOhms + (fastVolts - amps * fastOhms) * fastKeep;
        slowVolts = amps * slowOhms + (slowVolts - amps * slowOhms) * slowKeep;
        double part = amps * seconds / (3600 * parameters.ampHours());
        if (amps != 0) {
            double sign = Math.signum(amps);
            hysteresis = sign + (hysteresis - sign) * Math.exp(-parameters.hysteresisRate() * Math.abs(part));
        }
        charge += part - (parameters.leakAmps() + extraLeakAmps) * seconds / (3600 * parameters.ampHours());
        return watts;
    }
}
