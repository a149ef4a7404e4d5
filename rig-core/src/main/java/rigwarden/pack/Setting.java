package rigwarden.pack;

/** What an instrument was told last and still obeys. */
final class Setting {
    private boolean on;
    private double volts;
    private double amps;
    private boolean deaf;

    Setting() {}

    Setting(Setting other) {
        on = other.on;
        volts = other.volts;
        amps = other.amps;
        deaf = other.deaf;
    }

    void order(boolean nowOn, double nowVolts, double nowAmps) {
        if (!(nowVolts >= 0 && nowAmps >= 0)) {
            throw new IllegalArgumentException("not a setting: " + nowVolts + " V, " + nowAmps + " A");
        }
        if (!deaf) {
            on = nowOn;
            volts = nowVolts;
            amps = nowAmps;
        }
    }

    void deafen() {
        deaf = true;
    }

    boolean on() {
        return on;
    }

    double volts() {
        return volts;
    }

    double amps() {
        return amps;
    }
}
