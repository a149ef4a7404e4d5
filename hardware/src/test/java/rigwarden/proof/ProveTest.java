package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.ProofRehearsal;
import rigwarden.prove.Outcome;
import rigwarden.rig.Rig;

/** The guided check, whole, on both reference rigs with an emulated person. */
class ProveTest {
    @Test
    void both_rigs_pass_in_under_five_minutes() throws BusFailure {
        for (Rig rig : List.of(Bench.rig(), Bench.packRig())) {
            ProofRehearsal proof = new ProofRehearsal(rig, new EmulatedRig(rig, 1), List.of());

            if (proof.atRest(_ -> { })) {
                double rest = proof.seconds();
                System.out.printf("%.0f s at rest%n", rest);
                proof.energised(Bench.NOWHERE, _ -> { });
            }

            proof.outcomes().forEach(o -> System.out.println(o.result() + " " + o.kind() + ": " + o.words()));
            System.out.printf("%s: %.0f s%n", rig.name(), proof.seconds());
            assertThat(proof.passed()).as(rig.name()).isTrue();
            assertThat(proof.seconds()).isLessThan(300);
        }
    }
}
