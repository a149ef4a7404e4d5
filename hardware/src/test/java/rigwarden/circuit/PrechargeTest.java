package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rigwarden.rig.BusSide;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** The pre-charge of both reference rigs, with its parts as drawn and at the slow end of their tolerances. */
class PrechargeTest {
    private static final double LONGEST = 5;

    @Test
    void the_bus_is_within_a_twentieth_of_the_pack_in_five_seconds_on_both_rigs() throws Exception {
        for (String name : List.of("one-cell", "eight-cells")) {
            Rig rig = rig(name);
            BusSide side = rig.busSide();
            double pack = rig.cells().series() * 3.35;

            double drawn = reached(pack, side.prechargeOhms(), side.farads(), side.bleedOhms());
            double slow = reached(pack, side.prechargeOhms() * 1.02, side.farads() * 1.2, side.bleedOhms() * 0.98);

            System.out.printf(Locale.ROOT, "pre-charge, %-12s bus within 5 %% of %.2f V after %.3f s, at worst %.3f s%n", name, pack, drawn, slow);
            assertThat(drawn).isLessThan(LONGEST);
            assertThat(slow).isLessThan(LONGEST);
        }
    }

    private static double reached(double pack, double ohms, double farads, double bleed) throws Exception {
        Map<String, Double> seen = Ngspice.lines(String.format(Locale.ROOT, """
                Vp1 p1 0 0
                Vpp pp 0 pwl(0 0 0.1 0 0.1001 1)
                Vp2 p2 0 0
                X1 p1 pp p2 bus load amps path vpack=%1$f rpre=%2$f farads=%3$f rbleed=%4$f
                .tran 1m 5.1 0 2m uic
                .meas tran reached when v(bus)=%5$f rise=1""", pack, ohms, farads, bleed, pack * 0.95));
        return seen.get("reached") - 0.1;
    }

    static Rig rig(String name) {
        return switch (RigFile.read(Path.of("rigs", name + ".toml"))) {
            case Read.Sound<Rig> sound -> sound.value();
            case Read.Refused<Rig> refused -> throw new AssertionError(refused.refusals().toString());
        };
    }
}
