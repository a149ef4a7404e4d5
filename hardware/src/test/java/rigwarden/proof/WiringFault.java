package rigwarden.proof;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.Predicate;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Mishap;
import rigwarden.emulated.ProofRehearsal;
import rigwarden.prove.Outcome;
import rigwarden.prove.Prompt;
import rigwarden.rig.Rig;

/**
 * One way in which a rig can be wired wrongly, and how the guided check should name it.
 *
 * @param name for the table
 * @param unit of its size; empty where it has none
 * @param sizes tried, the smallest first; one where it has none
 * @param limit size that is found in 95 of 100 specimens, or a smaller one
 * @param until last prompt that is of interest at rest; empty for a fault that shows under energy only
 * @param makes the fault for a size, what is drawn of it from the chance
 * @param named whether an outcome names it
 */
record WiringFault(String name, String unit, List<Double> sizes, double limit, Optional<Class<? extends Prompt>> until, Maker makes,
        Predicate<Outcome> named) {

    /** A fault of a size on a rig. */
    interface Maker {
        Mishap make(Rig rig, double size, Random chance);
    }

    /** Found, and nothing more is of interest. */
    private static final class Enough extends RuntimeException {
        private static final long serialVersionUID = 1;

        Enough() {
            super("", null, false, false);
        }
    }

    /** Something before the first scan. */
    static Mishap now(BoardFault fault) {
        return new Mishap("", fault, 0, 0);
    }

    /** Whether the check names it on this specimen. */
    boolean found(Rig rig, double size, long seed) throws BusFailure {
        Mishap mishap = makes.make(rig, size, new Random(seed));
        ProofRehearsal proof = new ProofRehearsal(rig, new EmulatedRig(rig, seed), List.of(mishap));
        boolean[] found = new boolean[1];
        Consumer<List<Outcome>> look = outcomes -> {
            if (Boolean.getBoolean("rigwarden.loud")) {
                outcomes.forEach(o -> System.out.println("   " + o.result() + " " + o.kind() + ": " + o.words()));
            }
            found[0] |= outcomes.stream().filter(Outcome::spoils).anyMatch(named);
            if (found[0]) {
                throw new Enough();
            }
        };
        try {
            if (until.isPresent()) {
                proof.atRest(turn -> {
                    look.accept(turn.outcomes());
                    if (until.get().isInstance(turn.prompt())) {
                        throw new Enough();
                    }
                });
            } else {
                proof.energised(Bench.NOWHERE, look);
            }
        } catch (Enough _) {
            return found[0];
        }
        return found[0];
    }

    /** The smallest size that is found on this specimen, by its place; as many as there are sizes for none. */
    int smallest(Rig rig, long seed) throws BusFailure {
        int low = 0;
        int high = sizes.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (found(rig, sizes.get(middle), seed)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
