package rigwarden.pack;

/** State of one cell: charge, hysteresis, two relaxations. Its temperature comes from {@link Warmth}. */
final class Cell {
    private static final double KELVIN = 273.15;
    private static final double REFERENCE_CELSIUS = 25;

    private final CellParameters p;
    private final double ampSeconds;
    private double charge;
    private double hysteresis;
    private double fastVolts;
    private double slowVolts;
    private double leakAmps;

    private double curveVolts;
    private double entropicVoltsPerKelvin;
    private double ohms;
    private double fastOhms;
    private double slowOhms;
    private double meanVolts;
    private double heatWatts;

    private double seconds;
    private double fastKeep;
    private double fastMean;
    private double slowKeep;
    private double slowMean;

    Cell(CellParameters p, double charge, double celsius) {
        this.p = p;
        this.ampSeconds = p.ampHours() * 3600;
        this.charge = charge;
        this.hysteresis = p.startHysteresis();
        this.leakAmps = p.selfDischargeAmps();
        this.curveVolts = p.openCircuit().volts(charge);
        settle(celsius);
    }

    Cell(Cell other) {
        p = other.p;
        ampSeconds = other.ampSeconds;
        charge = other.charge;
        hysteresis = other.hysteresis;
        fastVolts = other.fastVolts;
        slowVolts = other.slowVolts;
        leakAmps = other.leakAmps;
        curveVolts = other.curveVolts;
        entropicVoltsPerKelvin = other.entropicVoltsPerKelvin;
        ohms = other.ohms;
        fastOhms = other.fastOhms;
        slowOhms = other.slowOhms;
        meanVolts = other.meanVolts;
        heatWatts = other.heatWatts;
        seconds = other.seconds;
        fastKeep = other.fastKeep;
        fastMean = other.fastMean;
        slowKeep = other.slowKeep;
        slowMean = other.slowMean;
    }

    /** Takes over the body's temperature: resistances and the entropic slope follow it and the charge. */
    void settle(double celsius) {
        entropicVoltsPerKelvin = p.openCircuit().voltsPerKelvin(charge);
        double exponent = celsius < REFERENCE_CELSIUS ? p.coldKelvin() : p.warmKelvin();
        double warmth = Math.exp(exponent * (1 / (celsius + KELVIN) - 1 / (REFERENCE_CELSIUS + KELVIN)));
        double fast = warmth * p.fastRise().factor(charge);
        ohms = p.ohms() * fast;
        fastOhms = p.fastOhms() * fast;
        slowOhms = p.slowOhms() * warmth * p.slowRise().factor(charge);
    }

    /** Lives through a step at constant current; afterwards the mean voltage and heat of the step can be read. */
    void step(double amps, double stepSeconds, double celsius) {
        if (stepSeconds != seconds) {
            fit(stepSeconds);
        }
        double curveBefore = curveVolts;
        charge += (amps - leakAmps) * stepSeconds / ampSeconds;
        curveVolts = p.openCircuit().volts(charge);
        double meanOpen = 0.5 * (curveBefore + curveVolts) + (celsius - REFERENCE_CELSIUS) * entropicVoltsPerKelvin;

        double meanHysteresis = amps == 0 ? hysteresis : turn(amps, stepSeconds);
        double fastAim = amps * fastOhms;
        double slowAim = amps * slowOhms;
        double over = p.hysteresisVolts() * meanHysteresis + fastAim + (fastVolts - fastAim) * fastMean
                + slowAim + (slowVolts - slowAim) * slowMean + amps * ohms;
        fastVolts = fastAim + (fastVolts - fastAim) * fastKeep;
        slowVolts = slowAim + (slowVolts - slowAim) * slowKeep;

        double entropicVolts = (celsius + KELVIN) * entropicVoltsPerKelvin;
        meanVolts = meanOpen + over;
        heatWatts = amps * (over + entropicVolts) - 2 * amps * amps * p.tabOhms()
                + leakAmps * (meanOpen - entropicVolts);
    }

    /** Exact for a constant current: returns the step's mean and leaves the end. */
    private double turn(double amps, double stepSeconds) {
        double aim = Math.signum(amps);
        double x = p.hysteresisRate() * Math.abs(amps) * stepSeconds / ampSeconds;
        double gone = x < 1e-3 ? x * (1 - x * (0.5 - x / 6)) : -Math.expm1(-x);
        double mean = x < 1e-3 ? 1 - x * (0.5 - x / 6) : gone / x;
        double away = hysteresis - aim;
        hysteresis = aim + away * (1 - gone);
        return aim + away * mean;
    }

    private void fit(double stepSeconds) {
        seconds = stepSeconds;
        fastKeep = Math.exp(-stepSeconds / p.fastSeconds());
        fastMean = -Math.expm1(-stepSeconds / p.fastSeconds()) * p.fastSeconds() / stepSeconds;
        slowKeep = Math.exp(-stepSeconds / p.slowSeconds());
        slowMean = -Math.expm1(-stepSeconds / p.slowSeconds()) * p.slowSeconds() / stepSeconds;
    }

    /** A spark of charge in no time. */
    void pour(double coulombs) {
        charge += coulombs / ampSeconds;
        curveVolts = p.openCircuit().volts(charge);
    }

    void leak(double moreAmps) {
        leakAmps += moreAmps;
    }

    /** Voltage without current now, behind {@link #ohms()}. */
    double emfVolts(double celsius) {
        return curveVolts + (celsius - REFERENCE_CELSIUS) * entropicVoltsPerKelvin
                + p.hysteresisVolts() * hysteresis + fastVolts + slowVolts;
    }

    double ohms() {
        return ohms;
    }

    double charge() {
        return charge;
    }

    /** Mean over the last step, at the studs. */
    double meanVolts() {
        return meanVolts;
    }

    /** Heat in the body over the last step; the studs' own share is not in it. */
    double heatWatts() {
        return heatWatts;
    }
}
