package rigwarden.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import rigwarden.pack.Chance;

/**
 * Draws the cases of a campaign. A case depends on the campaign's seed, its own number and the nights, and on nothing else: not on how
 * many cases or threads there are.
 */
final class CaseDraw {
    /** A size is drawn within a factor of 10 to this power on both sides of its limit, evenly in its logarithm. */
    private static final double DECADES = 1.5;
    private static final int TURN_SCANS = 3;
    private static final double SHORT_S = 600;
    private static final double LONG_S = 3 * 3600;
    private static final double LONG_SHARE = 0.02;
    private static final double PAIR_SHARE = 0.3;
    private static final double TURN_SHARE = 0.5;
    private static final double END_SHARE = 0.25;
    private static final double COMPONENT_SHARE = 0.5;
    private static final double MESSAGE_SHARE = 0.42;
    /** A latent fault of an older age begins with the run; its partner comes within so many scans. */
    private static final long EARLY_SCANS = 3000;

    private final long seed;
    private final List<Night> nights;
    private final Map<Scene, List<FaultKind>> kinds;

    CaseDraw(long seed, List<Night> nights) {
        this.seed = seed;
        this.nights = nights;
        kinds = nights.stream().map(Night::scene).distinct()
                .collect(Collectors.toMap(scene -> scene, scene -> Catalogue.of(scene.rig())));
    }

    Case draw(int number) {
        Chance chance = Chance.of(seed, "case " + number, "draw");
        Night night = nights.get(chance.nextInt(nights.size()));
        boolean pair = chance.nextDouble() < PAIR_SHARE;
        boolean old = pair && chance.nextBoolean();
        boolean lasting = chance.nextDouble() < LONG_SHARE;
        long active = instant(night, chance, old);
        long latent = !pair ? active : old ? 0 : Math.max(0, active - 300 - chance.nextInt(2700));
        double scans = (lasting ? LONG_S : SHORT_S) * 1e9 / night.scene().rig().scanNanos();
        List<Strike> strikes = new ArrayList<>();
        if (pair) {
            strikes.add(new Strike(latentFault(night, chance), latent));
        }
        strikes.add(new Strike(fault(night, chance), active));
        return new Case(number, "", night, strikes, latent + Math.round(scans));
    }

    private long instant(Night night, Chance chance, boolean early) {
        long last = early ? EARLY_SCANS : night.scans();
        double which = chance.nextDouble();
        List<Long> turns = night.turns().stream().filter(scan -> scan <= last).toList();
        if (which < TURN_SHARE && !turns.isEmpty()) {
            return Math.max(0, turns.get(chance.nextInt(turns.size())) + chance.nextInt(2 * TURN_SCANS + 1) - TURN_SCANS);
        }
        List<Long> openings = night.openings();
        if (which < TURN_SHARE + END_SHARE && !early && !openings.isEmpty()) {
            return Math.max(0, openings.get(chance.nextInt(openings.size())) - chance.nextInt(6000));
        }
        return chance.nextLong(last + 1);
    }

    private Injection fault(Night night, Chance chance) {
        double which = chance.nextDouble();
        Origin origin = which < COMPONENT_SHARE ? Origin.COMPONENT
                : which < COMPONENT_SHARE + MESSAGE_SHARE ? Origin.COMMUNICATION : Origin.MANGLER;
        return fault(night, origin, chance, DECADES);
    }

    /** A part that is broken already, by no more than what nobody ought to have found. */
    private Injection latentFault(Night night, Chance chance) {
        return fault(night, Origin.COMPONENT, chance, 0);
    }

    private Injection fault(Night night, Origin origin, Chance chance, double highest) {
        List<FaultKind> all = new ArrayList<>(kinds.get(night.scene()));
        all.removeIf(kind -> kind.origin() != origin);
        FaultKind kind = all.get(chance.nextInt(all.size()));
        Place place = kind.places().get(chance.nextInt(kind.places().size()));
        double power = -DECADES + (highest + DECADES) * chance.nextDouble();
        double size = kind.sized() ? Math.min(kind.most(), kind.limit() * Math.pow(10, power)) : 0;
        return kind.at(place, size, chance.nextLong());
    }
}
