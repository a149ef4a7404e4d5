package rigwarden.pack;

/** A sink as the world moves it and the path asks it. Currents are positive into the sink. */
sealed interface Sink permits OrderedSink {
    /** The runtime of a kind of sink. */
    static Sink of(Load load, PathParameters path) {
        return switch (load) {
            case Load.Electronic _, Load.Resistor _ ->
                new OrderedSink(load, path.slewAmpsPerSecond(), path.sinkLeadOhms());
        };
    }

    /** The same, going its own way from here. */
    Sink copy();

    /** Takes in whether its relay is closed, and the time. */
    void aim(boolean relay, long nanos);

    /** What follows its aim: a current, a power. */
    Ramp ramp();

    /** When it changes by itself, or the end of time. */
    long dueNanos();

    /** Whether its input is on. */
    boolean on();

    /** Conductance that it lays across the bus now, its leads in it. */
    double siemens();

    /**
     * Current besides that of its conductance, with K1 closed.
     *
     * @param openVolts what the bus would have without it
     * @param ohms how stiff the bus is
     */
    double amps(double openVolts, double ohms);

    /** Current besides that of its conductance, from a bus that holds this voltage for the moment. */
    double amps(double busVolts);

    /** Whether its relay lies between its terminals and the bus. */
    boolean relayInLead();

    /**
     * Obeys an order.
     *
     * @throws IllegalArgumentException if it takes no orders or the current is none
     */
    void order(boolean on, double amps);

    /** Hears no more orders. */
    void deafen();
}
