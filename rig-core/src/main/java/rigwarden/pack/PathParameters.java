package rigwarden.pack;

import java.util.List;

/**
 * The power path. All defaults are assumptions of this project, of the size that data sheets of such parts state.
 *
 * @param jointOhms stud to lug or bar, each
 * @param linkOhms lug or bar itself
 * @param fuseOhms the fuse
 * @param shuntOhms the shunt
 * @param contactorOhms closed main contactor
 * @param prechargeOhms resistor parallel to it
 * @param busFarads capacitance of the bus without the sinks' own, above 0
 * @param bleedOhms resistor across the bus
 * @param sourceLeadOhms from the bus to the source's terminals
 * @param sinkLeadOhms from the bus to the sink's terminals
 * @param slewAmpsPerSecond how fast source and sink move towards a new current
 * @param fuseAmps rating of the fuse; 0 for one that never blows
 * @param supplies kinds of source, each with its own relay; the first is source 0
 * @param loads kinds of sink, each with its own relay; the first is sink 0
 */
public record PathParameters(double jointOhms, double linkOhms, double fuseOhms, double shuntOhms,
        double contactorOhms, double prechargeOhms, double busFarads, double bleedOhms, double sourceLeadOhms,
        double sinkLeadOhms, double slewAmpsPerSecond, double fuseAmps, List<Supply> supplies, List<Load> loads) {
    public PathParameters {
        supplies = List.copyOf(supplies);
        loads = List.copyOf(loads);
        if (!(prechargeOhms > 0 && busFarads > 0 && bleedOhms > 0 && slewAmpsPerSecond > 0)) {
            throw new IllegalArgumentException("pre-charge, bus capacitance, bleed and slew must be above 0");
        }
    }

    /** A bench path for about 100 A. */
    public static PathParameters bench() {
        return new PathParameters(0.05e-3, 0.03e-3, 0.2e-3, 0.25e-3, 0.3e-3, 4.7, 10e-3, 220, 1e-3, 1e-3, 2000, 0,
                List.of(new Supply.Programmable()), List.of(new Load.Electronic(0.1)));
    }

    /** The same path with other sources. */
    public PathParameters withSupplies(Supply... others) {
        return new PathParameters(jointOhms, linkOhms, fuseOhms, shuntOhms, contactorOhms, prechargeOhms, busFarads,
                bleedOhms, sourceLeadOhms, sinkLeadOhms, slewAmpsPerSecond, fuseAmps, List.of(others), loads);
    }

    /** The same path with other sinks. */
    public PathParameters withLoads(Load... others) {
        return new PathParameters(jointOhms, linkOhms, fuseOhms, shuntOhms, contactorOhms, prechargeOhms, busFarads,
                bleedOhms, sourceLeadOhms, sinkLeadOhms, slewAmpsPerSecond, fuseAmps, supplies, List.of(others));
    }

    /** The same path with another bus. */
    public PathParameters withBus(double ohmsOfPrecharge, double farads, double ohmsOfBleed) {
        return new PathParameters(jointOhms, linkOhms, fuseOhms, shuntOhms, contactorOhms, ohmsOfPrecharge, farads,
                ohmsOfBleed, sourceLeadOhms, sinkLeadOhms, slewAmpsPerSecond, fuseAmps, supplies, loads);
    }

    /** The same path with other leads to sources and sinks. */
    public PathParameters withLeads(double ohmsToSource, double ohmsToSink) {
        return new PathParameters(jointOhms, linkOhms, fuseOhms, shuntOhms, contactorOhms, prechargeOhms, busFarads,
                bleedOhms, ohmsToSource, ohmsToSink, slewAmpsPerSecond, fuseAmps, supplies, loads);
    }

    /** The same path with another shunt. */
    public PathParameters withShunt(double otherOhms) {
        return new PathParameters(jointOhms, linkOhms, fuseOhms, otherOhms, contactorOhms, prechargeOhms, busFarads,
                bleedOhms, sourceLeadOhms, sinkLeadOhms, slewAmpsPerSecond, fuseAmps, supplies, loads);
    }

    /** The same path with a fuse of this rating, A. */
    public PathParameters withFuse(double ratedAmps) {
        return new PathParameters(jointOhms, linkOhms, fuseOhms, shuntOhms, contactorOhms, prechargeOhms, busFarads, bleedOhms,
                sourceLeadOhms, sinkLeadOhms, slewAmpsPerSecond, ratedAmps, supplies, loads);
    }

    /** All capacitance on the bus, the sinks' own in it. */
    double allFarads() {
        return busFarads + loads.stream().mapToDouble(PathParameters::farads).sum();
    }

    private static double farads(Load load) {
        return switch (load) {
            case Load.Inverter inverter -> inverter.farads();
            case Load.Electronic _, Load.Resistor _ -> 0;
        };
    }
}
