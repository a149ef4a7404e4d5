package rigwarden.pack;

/**
 * The bus with K1 closed, as one source sees it: all other currents are fixed for the moment.
 *
 * @param emfVolts of the cells in series
 * @param senseOhms between the outer studs
 * @param ohms from the cells' emf to the bus
 * @param share 1 + conductance across the bus × {@code ohms}
 * @param loadAmps what the sinks take at a current of their own
 * @param ownAmps what the conductance across the bus would take at {@code emfVolts}
 * @param othersAmps what the other sources deliver
 */
record Knot(double emfVolts, double senseOhms, double ohms, double share, double loadAmps, double ownAmps,
        double othersAmps) {}
