package rigwarden.paper;

import rigwarden.rig.Rig;
import rigwarden.warden.Trip;

/** A trip in words. */
public final class TripWords {
    private TripWords() {}

    /** What tripped, where, what was found there, and when it clears. */
    public static String of(Rig rig, Trip trip) {
        return Spots.say("Rule %d, %s: %s At %s %s was found where %s is the limit. It clears: %s.",
                trip.rule().number(), trip.rule().name(), trip.rule().sentence(), place(rig, trip),
                figure(trip, trip.value()), figure(trip, trip.limit()), trip.rule().clears().words());
    }

    /** What hangs on it. */
    public static String consequence(Rig rig, Trip trip) {
        return Spots.say("And then rule %d, %s, at %s.", trip.rule().number(), trip.rule().name(),
                Spots.of(rig, trip.where()));
    }

    /** The tap between two cells is named by the lower one's channel. */
    private static String place(Rig rig, Trip trip) {
        boolean tap = trip.rule().number() == 5;
        return tap ? "the tap between cell " + trip.where().cell() + " and " + (trip.where().cell() + 1)
                : Spots.of(rig, trip.where());
    }

    /** Some rules compare a rise or a time and not what their channel shows. */
    private static String figure(Trip trip, double value) {
        return switch (trip.rule().number()) {
            case 9 -> Spots.number(2, value / 3600) + " Ah";
            case 26, 27 -> Spots.number(1, value) + " K/min";
            case 29 -> Spots.number(1, value) + " K";
            case 31, 32, 34, 47, 49 -> Spots.number(2, value) + " s";
            default -> Spots.value(trip.where().quantity(), value);
        };
    }
}
