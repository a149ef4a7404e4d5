package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;

/** The bill of materials against the two reference rigs. */
class PartsTest {
    private static final Path FILE = Path.of("parts.csv");
    private static final List<String> RIGS = List.of("one-cell", "eight-cells");
    private static final List<String> COLUMNS = List.of("part", "property", "need", "one_cell", "eight_cells", "unit", "why");

    @Test
    void every_rating_is_what_the_reference_rigs_need_rounded_to_the_safe_side() throws IOException {
        Map<String, ToDoubleFunction<Rig>> needs = Needs.all();
        List<String> wrong = new ArrayList<>();
        TreeSet<String> unsaid = new TreeSet<>(needs.keySet());
        for (NamedCsvRecord row : rows()) {
            String key = row.getField("part") + "/" + row.getField("property");
            if (row.getField("need").equals("is")) {
                assertThat(needs).as(key).doesNotContainKey(key);
            } else {
                assertThat(needs).as("what computes this row").containsKey(key);
                for (String rig : RIGS) {
                    String wanted = rounded(needs.get(key).applyAsDouble(PrechargeTest.rig(rig)), row.getField("need"));
                    String said = row.getField(rig.replace('-', '_'));
                    if (!said.equals(wanted)) {
                        wrong.add(key + ", " + rig + ": it says " + said + " and " + wanted + " is needed");
                    }
                }
                unsaid.remove(key);
            }
        }

        assertThat(wrong).isEmpty();
        assertThat(unsaid).as("needs without a row").isEmpty();
    }

    @Test
    void the_ratings_that_the_rig_files_claim_are_not_below_the_needs() {
        for (String name : RIGS) {
            Rig rig = PrechargeTest.rig(name);
            Map<String, ToDoubleFunction<Rig>> needs = Needs.all();

            rig.path().forEach(part -> {
                double claimed = part.ratedAmps();
                switch (part.kind()) {
                    case FUSE -> {
                        assertThat(part.breaksAmps()).isGreaterThanOrEqualTo(needs.get("fuse/breaking capacity").applyAsDouble(rig));
                        assertThat(claimed).isGreaterThanOrEqualTo(needs.get("fuse/continuous").applyAsDouble(rig) - 1e-6);
                    }
                    case SHUNT -> assertThat(claimed).isGreaterThanOrEqualTo(needs.get("shunt/nominal").applyAsDouble(rig) - 1e-6);
                    case CABLE -> assertThat(claimed).isGreaterThanOrEqualTo(needs.get("power cable/ampacity").applyAsDouble(rig) - 1e-6);
                    case CONTACTOR -> assertThat(part.breaksAmps()).isGreaterThanOrEqualTo(needs.get("K1 contactor/breaks").applyAsDouble(rig));
                    case RELAY -> assertThat(part.breaksAmps()).as(part.name()).isGreaterThanOrEqualTo(
                            needs.get(part.name().startsWith("source") ? "second element, source/breaks" : "second element, sink/breaks")
                                    .applyAsDouble(rig));
                    case BAR, LUG, PLUG -> assertThat(claimed).isGreaterThanOrEqualTo(needs.get("K1 contactor/continuous").applyAsDouble(rig));
                }
            });
        }
    }

    @Test
    void the_table_is_plain_csv_and_names_no_product() throws IOException {
        String text = Files.readString(FILE);

        assertThat(rows().getFirst().getHeader()).isEqualTo(COLUMNS);
        assertThat(text).contains("\r\n").doesNotContain("\t").doesNotContainPattern("[^\\r]\\n");
        assertThat(rows()).allSatisfy(row -> assertThat(row.getField("why")).isNotBlank());
    }

    private static String rounded(double value, String need) {
        RoundingMode mode = switch (need) {
            case "at least" -> RoundingMode.CEILING;
            case "at most" -> RoundingMode.FLOOR;
            case String other -> throw new AssertionError("a need is \"at least\", \"at most\" or \"is\", not " + other);
        };
        BigDecimal exact = new BigDecimal(value).round(new MathContext(9, RoundingMode.HALF_EVEN));
        return exact.signum() == 0 ? "" : exact.round(new MathContext(2, mode)).stripTrailingZeros().toPlainString();
    }

    private static List<NamedCsvRecord> rows() throws IOException {
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(FILE)) {
            return reader.stream().toList();
        }
    }
}
