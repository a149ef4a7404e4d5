package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rigwarden.paper.CautionWords;

/** {@code hardware/guide.md}: its cautions, its order, and the worked figure of each of its formulas. */
class GuideTest {
    private static final Path GUIDE = Path.of("guide.md");

    @Test
    void every_worked_figure_is_what_its_formula_gives() throws IOException {
        Map<String, Double> worked = worked();
        Map<String, String> said = new LinkedHashMap<>();
        Files.readAllLines(GUIDE).stream().map(line -> line.split("\\|", -1)).filter(cells -> cells.length == 7 && !cells[1].contains("--")
                && !cells[1].strip().equals("what")).forEach(cells -> said.put(cells[1].strip(), cells[4].strip() + "|" + cells[5].strip()));

        assertThat(said.keySet()).containsExactlyElementsOf(worked.keySet());
        worked.forEach((name, value) -> {
            String[] parts = said.get(name).split("[ |]", 3);
            double figure = Double.parseDouble(parts[0]);
            assertThat(Math.abs(figure - value)).as(name + ": the guide says " + figure + ", it gives " + value).isLessThan(value * 0.006);
            assertThat(parts[2]).as(name).matches("(published|common practice|from memory).*");
        });
    }

    @Test
    void it_says_the_cautions_and_the_order_in_which_a_rig_is_first_switched_on() throws IOException {
        String guide = Files.readString(GUIDE);

        assertThat(guide).contains(CautionWords.all());
        assertThat(guide).containsSubsequence("Prove the sensors", "Prove the stop", "Only then energise");
    }

    @Test
    void it_names_every_file_that_it_speaks_of() throws IOException {
        String guide = Files.readString(GUIDE);

        try (var files = Files.list(Path.of("system"))) {
            List<String> names = files.map(file -> "system/" + file.getFileName()).toList();
            assertThat(guide).contains(names);
        }
    }

    private static Map<String, Double> worked() {
        double volts = 8 * 3.65;
        Map<String, Double> worked = new LinkedHashMap<>();
        worked.put("prospective short circuit", Formulas.shortCircuitAmps(3.4, 0.0002));
        worked.put("fuse", Formulas.fuseAmps(80));
        worked.put("cable in a short circuit", Formulas.cableSquareMillimetres(17_000, 0.01, Formulas.PVC));
        worked.put("cable, drop", 80 * Formulas.copperOhms(2, 35, 20));
        worked.put("bar, resistance", Formulas.copperOhms(0.1, 60, 65) * 1e6);
        worked.put("bar between two studs, its middle over its ends", Formulas.linkKelvin(80, 60, 0.08));
        worked.put("bar, free", Formulas.barAmps(20, 3));
        worked.put("shunt, heat", Formulas.watts(80, 0.0005));
        worked.put("pre-charge, time constant", Formulas.prechargeTau(10, 220, 0.03));
        worked.put("pre-charge, time to 95 %", Formulas.prechargeSeconds(10, 220, 0.03));
        worked.put("pre-charge, energy", Formulas.prechargeJoules(0.03, volts));
        worked.put("bleed, heat", volts * volts / 220);
        worked.put("bleed, time to 5 %", Formulas.bleedSeconds(220, 0.03));
        worked.put("coil, plain diode", Formulas.coilSeconds(1.5, 48, 24, 0.7, 0.1));
        worked.put("coil, diode and zener", Formulas.coilSeconds(1.5, 48, 24, 56.7, 0.1));
        worked.put("heartbeat, hold", Formulas.holdSeconds(243_500, 4.55e-6, 0.83, 0.411));
        worked.put("cell window, high edge", Formulas.windowVolts(2.5, 10_000, 20_000));
        worked.put("cell window, low edge", Formulas.dividedVolts(2.5, 1740, 20_000));
        worked.put("sense lead, short circuit", volts / Formulas.copperOhms(0.6, 0.25, 20));
        return worked;
    }
}
