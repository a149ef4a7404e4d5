package rigwarden.campaign;

import java.util.List;

/**
 * One line of a list of faults, for one rig.
 *
 * @param name part and what becomes of it, in lower case, for example "joint loosens"
 * @param origin list that it comes from
 * @param how its word in that list
 * @param unit of its size; empty where it has none
 * @param limit size at which it ought to be found: as the safety page has it where it says so, else a choice of this project; 0 without a size
 * @param most greatest size that makes sense
 * @param places where in the rig it can happen, never empty
 */
public record FaultKind(String name, Origin origin, String how, String unit, double limit, double most, List<Place> places) {
    public FaultKind {
        places = List.copyOf(places);
        if (places.isEmpty()) {
            throw new IllegalArgumentException(name + " can happen nowhere in this rig");
        }
    }

    /** Whether it can be more or less. */
    public boolean sized() {
        return limit > 0;
    }

    /** The fault at one of its places, with a size in its unit, and a seed for what is drawn while it goes on. */
    public Injection at(Place place, double size, long seed) {
        return new Injection(this, place.name(), size, place.making().make(size, seed));
    }
}
