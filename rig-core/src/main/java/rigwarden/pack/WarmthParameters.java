package rigwarden.pack;

/**
 * Heat capacities in J/K and conductances in W/K. Nodes must be slow against the step of 0.1 s; {@link World} refuses
 * a node that would follow its neighbours in under 1 s.
 *
 * @param bodyToRoom per cell; 0.6 alone, 0.25 in a pack (time constant 1 h to 2.3 h)
 * @param bodyToBody between neighbours
 * @param studCapacity each stud
 * @param studToBody each stud
 * @param studToLink each stud
 * @param linkCapacity each lug or bar
 * @param linkToRoom each lug or bar
 * @param cableToRoom added at both cable ends
 * @param shuntCapacity the shunt
 * @param shuntToRoom the shunt
 * @param contactorCapacity the main contactor
 * @param contactorToRoom the main contactor
 */
public record WarmthParameters(double bodyToRoom, double bodyToBody, double studCapacity, double studToBody,
        double studToLink, double linkCapacity, double linkToRoom, double cableToRoom, double shuntCapacity,
        double shuntToRoom, double contactorCapacity, double contactorToRoom) {

    /** One cell standing alone (assumption, after contact theory and film coefficients). */
    public static WarmthParameters alone() {
        return withBody(0.6);
    }

    /** Cells standing side by side. */
    public static WarmthParameters inPack() {
        return withBody(0.25);
    }

    /** No way out for any heat, for checks of the balance. */
    public static WarmthParameters sealed() {
        return new WarmthParameters(0, 4, 40, 0.8, 1.5, 30, 0, 0, 60, 0, 150, 0);
    }

    /** Bodies that lose so much to the room, W/K: a box around them, a fan, or another size than usual. */
    public static WarmthParameters withBody(double bodyToRoom) {
        return new WarmthParameters(bodyToRoom, 4, 40, 0.8, 1.5, 30, 0.06, 0.3, 60, 0.5, 150, 0.8);
    }

    /** The same with cables that cool more or less. */
    public WarmthParameters withCables(double other) {
        return new WarmthParameters(bodyToRoom, bodyToBody, studCapacity, studToBody, studToLink, linkCapacity, linkToRoom, other, shuntCapacity,
                shuntToRoom, contactorCapacity, contactorToRoom);
    }
}
