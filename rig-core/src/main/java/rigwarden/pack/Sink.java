package rigwarden.pack;

/** A sink as the world moves it and the path asks it. Currents are positive into the sink. */
sealed interface Sink permits OrderedSink, InverterSink {
    /** The runtime of a kind of sink. */
    static Sink of(Load load, PathParameters path) {
        return switch (load) {
            case Load.Electronic _, Load.Resistor _ ->
                new OrderedSink(load, path.slewAmpsPerSecond(), path.sinkLeadOhms());
            case Load.Inverter inverter -> new InverterSink(inverter, path.sinkLeadOhms());
        };
    }

    /** The same, going its own way from here. */
    Sink copy();

    /** Takes in whether its relay is closed, and the time. */
    void aim(boolean relay, long nanos);

    /** Takes in its terminals; true if that makes it do something of its own, now or after a while. */
    boolean saw(double volts, double amps, long nanos);

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

    /** Voltage of the bus below which it quits; 0 if it would not. */
    double leaveVolts();

    /** Amplitude of the 100 Hz part of its current, over the mean. */
    double rippleShare();

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

    /** Takes so many times what it should from now on; times multiply. */
    void stray(double times);
}
