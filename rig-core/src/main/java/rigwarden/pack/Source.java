package rigwarden.pack;

/** A source as the world moves it and the path asks it. Currents are positive out of the source. */
sealed interface Source permits OrderedSource, MainsCharger {
    /** The runtime of a kind of source. */
    static Source of(Supply supply, PathParameters path) {
        return switch (supply) {
            case Supply.Programmable _ -> new OrderedSource(path.slewAmpsPerSecond());
            case Supply.Charger charger -> new MainsCharger(charger, path.sourceLeadOhms());
        };
    }

    /** The same, going its own way from here. */
    Source copy();

    /**
     * Takes in its relay and the time.
     *
     * @param relay whether its relay is closed
     * @param joined whether current can flow from the bus into the pack, K1 being closed
     */
    void aim(boolean relay, boolean joined, long nanos);

    /** Takes in what it delivers; true if that makes it do something of its own, now or after a while. */
    boolean saw(double amps, long nanos);

    /** The current that it may deliver now into a pack. */
    Ramp limitAmps();

    /** When it changes by itself, or the end of time. */
    long dueNanos();

    /** Whether its output is on. */
    boolean on();

    /** Whether its output is on and leads to the bus. */
    boolean feeds();

    /** What it regulates to. */
    double volts();

    /** What it may deliver in the end. */
    double settingAmps();

    /** The current, of any size and sign, that would bring it to its own voltage with K1 closed. */
    double wantedAmps(Knot knot);

    /** Whether its relay lies between its terminals and the bus. */
    boolean relayInLead();

    /**
     * Obeys an order.
     *
     * @throws IllegalArgumentException if it takes no orders or the values are none
     */
    void order(boolean on, double volts, double amps);

    /** Hears no more orders. */
    void deafen();

    /** Regulates so much higher, and delivers so many times its current. */
    void stray(double moreVolts, double timesAmps);
}
