package rigwarden.serial;

import rigwarden.warden.Setpoint;

/** What an instrument shall do. */
public sealed interface Order {
    /** Nothing flows. */
    record Off() implements Order {}

    /** Work at a set point. */
    record On(Setpoint set) implements Order {}

    Order OFF = new Off();
}
