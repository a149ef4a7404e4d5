package rigwarden.prove;

import java.util.Locale;
import rigwarden.warden.Trip;

/** A trip in a proof, in plain words with what to look at. */
final class TripOutcome {
    private TripOutcome() {}

    /** {@code during} is what was being proved. */
    static Outcome of(Trip trip, String during) {
        String words = String.format(Locale.ROOT, "%s Found %.4g at %s where %.4g is the limit (rule %d, while proving %s). %s", trip.rule().sentence(),
                trip.value(), trip.where().name(), trip.limit(), trip.rule().number(), during, lookAt(trip.rule().number()));
        return switch (trip.rule().number()) {
            case 42, 44, 49 -> Outcome.failed(Outcome.Part.HEARTBEAT, "", words);
            case 17, 18 -> Outcome.failed(Outcome.Part.NO_LOAD, "", words);
            case 6 -> Outcome.failed(Outcome.Part.JOINT, "", words);
            default -> Outcome.failed(Outcome.Part.STOP, during, words);
        };
    }

    private static String lookAt(int rule) {
        return switch (rule) {
            case 1, 2, 3 -> "Bring the cells nearer to the middle, then prove again.";
            case 4, 5, 6, 33 -> "Look at the taps: a lead, its ring, its fuse, the joint under it.";
            case 10, 14 -> "The shunt's two sense leads are swapped, or source and sink are.";
            case 11, 12, 13, 38 -> "Look at the device's leads and setting, and at the shunt's sense leads: each on its own screw.";
            case 15, 16 -> "Look at the relay's and the contactor's contacts and at every plug of the path.";
            case 17, 18 -> "Look at the charger's voltage setting and its leads; measure it by hand before any cell meets it.";
            case 19, 45, 46, 48 -> "A contact is welded, or something else feeds the bus: part the cells by hand before anything else.";
            case 31, 32, 34, 35, 36 -> "Look at the plug, the supply and the address of what fell silent.";
            case 39 -> "The device's own relay is stuck, bridged, or its line moves another: the contactor would stand alone.";
            case 40 -> "The contactor is welded or bridged: part the cells by hand, then replace it.";
            case 41 -> "The loop was opened, or a contact of it is loose.";
            case 42 -> "The heartbeat stage does not feed the coil: look at its input line and its supply.";
            case 43 -> "The contactor's coil, its supply, or its mirror contact's wire.";
            case 44 -> "The heartbeat stage is stuck or too slow: a dead computer would hold the contactor closed.";
            case 47 -> "The pre-charge resistor, its relay, or a load that was left on the bus.";
            case 49 -> "The heartbeat stage lets go too soon, or the contactor fell for another reason: look at its coil and its timing part.";
            default -> "Find the cause before anything is tried again.";
        };
    }
}
