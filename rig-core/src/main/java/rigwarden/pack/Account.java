package rigwarden.pack;

/** What went through the shunt since the start. Charge and energy are positive into the cells. */
final class Account {
    private static final double SHUNT_REFERENCE_C = 25;

    private double coulombsIn;
    private double coulombsOut;
    private double coulombKelvins;
    private double joules;
    private double busJoules;

    Account() {}

    Account(Account other) {
        coulombsIn = other.coulombsIn;
        coulombsOut = other.coulombsOut;
        coulombKelvins = other.coulombKelvins;
        joules = other.joules;
        busJoules = other.busJoules;
    }

    void enter(double coulombs, double studVolts, double busVolts, double shuntCelsius) {
        coulombsIn += Math.max(coulombs, 0);
        coulombsOut += Math.max(-coulombs, 0);
        coulombKelvins += coulombs * (shuntCelsius - SHUNT_REFERENCE_C);
        joules += coulombs * studVolts;
        busJoules += coulombs * busVolts;
    }

    double coulombsIn() {
        return coulombsIn;
    }

    double coulombsOut() {
        return coulombsOut;
    }

    double coulombKelvins() {
        return coulombKelvins;
    }

    double joules() {
        return joules;
    }

    double busJoules() {
        return busJoules;
    }
}
