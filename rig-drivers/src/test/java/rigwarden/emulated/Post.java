package rigwarden.emulated;

/** Terminals in tests: what was ordered, and what the meter sees. */
final class Post implements Terminals {
    boolean on;
    double orderedVolts;
    double orderedAmps;
    double volts;
    double amps;

    @Override
    public void order(boolean newOn, double newVolts, double newAmps) {
        on = newOn;
        orderedVolts = newVolts;
        orderedAmps = newAmps;
    }

    @Override
    public double volts() {
        return volts;
    }

    @Override
    public double amps() {
        return amps;
    }
}
