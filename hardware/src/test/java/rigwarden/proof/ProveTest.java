package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Mishap;
import rigwarden.emulated.ProofRehearsal;
import rigwarden.pack.Fault;
import rigwarden.prove.Outcome;
import rigwarden.rig.Rig;

/**
 * The guided check, whole, on both reference rigs with an emulated person; and how small a fault it finds. A sample is in the default run, the whole with
 * {@code -Drigwarden.specimens=100 -Drigwarden.healthy=200}.
 */
class ProveTest {
    private static final int SPECIMENS = Integer.getInteger("rigwarden.specimens", 1);
    private static final int HEALTHY = Integer.getInteger("rigwarden.healthy", 2);
    /** Specimens from which on 95 of 100 can be told. */
    private static final int ENOUGH = 20;
    private static final double LONGEST_SECONDS = 300;
    /** What the check cannot find, and says so: between two fingers a bead is as warm wherever it hangs. */
    private static final String NOT_FOUND = "probe has come off";

    private static ProofRehearsal whole(Rig rig, EmulatedRig emulated, double holdSeconds) {
        Mishap hold = WiringFault.now(new BoardFault.InWorld(new Fault.SlowHeartbeat(holdSeconds)));
        ProofRehearsal proof = new ProofRehearsal(rig, emulated, List.of(hold));
        if (proof.atRest(_ -> { })) {
            proof.energised(Bench.NOWHERE, _ -> { });
        }
        return proof;
    }

    @Test
    void sound_rigs_at_the_edges_of_their_tolerances_pass_in_under_five_minutes() throws BusFailure {
        for (Rig rig : List.of(Bench.rig(), Bench.packRig())) {
            int passed = 0;
            double longest = 0;
            List<String> failures = new ArrayList<>();
            for (int seed = 1; seed <= HEALTHY; seed++) {
                double hold = seed % 2 == 0 ? rig.guards().heartbeatShortest() : rig.guards().heartbeatLongest();
                ProofRehearsal proof = whole(rig, EmulatedRig.atTheEdges(rig, seed), hold);
                passed += proof.passed() ? 1 : 0;
                longest = Math.max(longest, proof.seconds());
                int specimen = seed;
                proof.outcomes().stream().filter(Outcome::spoils).map(o -> specimen + ": " + o.kind() + ": " + o.words()).forEach(failures::add);
            }

            System.out.printf(Locale.ROOT, "%s: %d of %d sound specimens at the edges pass, in at most %.0f s of a person's time%n", rig.name(), passed,
                    HEALTHY, longest);
            assertThat(failures).isEmpty();
            assertThat(longest).isLessThan(LONGEST_SECONDS);
        }
    }

    @Test
    void each_wiring_fault_is_found_from_its_stated_size_on() throws BusFailure {
        String only = System.getProperty("rigwarden.only", "");
        for (Rig rig : List.of(Bench.rig(), Bench.packRig())) {
            System.out.printf(Locale.ROOT, "%n%s, %d specimens%n%-36s %-22s %s%n", rig.name(), SPECIMENS, "fault", "found in 95 of 100", "largest tried found in");
            for (WiringFault fault : WiringFaults.of(rig)) {
                if (fault.name().contains(only)) {
                    int[] smallest = new int[SPECIMENS];
                    for (int seed = 1; seed <= SPECIMENS; seed++) {
                        smallest[seed - 1] = fault.smallest(rig, 1000 + seed);
                    }
                    told(fault, smallest);
                }
            }
        }
    }

    private static void told(WiringFault fault, int[] smallest) {
        int sizes = fault.sizes().size();
        long found = Arrays.stream(smallest).filter(s -> s < sizes).count();
        int[] sorted = Arrays.stream(smallest).sorted().toArray();
        int limit = sorted[(int) Math.ceil(0.95 * sorted.length) - 1];
        String size = limit == sizes ? "not" : fault.unit().isEmpty() ? "yes" : String.format(Locale.ROOT, "%.4g %s", fault.sizes().get(limit), fault.unit());
        System.out.printf(Locale.ROOT, "%-36s %-22s %d of %d%n", fault.name(), size, found, smallest.length);
        if (fault.name().equals(NOT_FOUND)) {
            assertThat(found).as(fault.name()).isZero();
        } else {
            assertThat(limit).as(fault.name()).isLessThan(sizes);
            assertThat(limit).as("%s: found in 95 of 100 from its stated size on", fault.name())
                    .isLessThanOrEqualTo(SPECIMENS < ENOUGH ? sizes - 1 : fault.sizes().indexOf(fault.limit()));
        }
    }
}
