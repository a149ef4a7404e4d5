package rigwarden.elsewhere;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rigwarden.rig.RatedAt;
import rigwarden.rigfile.KeyList;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.Refusal;

/** A map is read as strictly as a rig file, and those that are shipped are sound. */
class MapFileTest {
    private static final String SHIPPED = BroughtIn.shipped("open-lfp-26650-pulses");

    private static String refused(String text) {
        return switch (MapFile.read("map", text)) {
            case Read.Sound<LogMap> _ -> "";
            case Read.Refused<LogMap> no -> String.join("\n", no.refusals().stream().map(Refusal::print).toList());
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"open-lfp-26650-charge", "open-lfp-26650-discharge", "open-lfp-26650-held-charge", "open-lfp-26650-pulses"})
    void a_shipped_map_is_sound(String map) {
        assertThat(refused(BroughtIn.shipped(map))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "into_cells = \"positive\", into_cells = \"upwards\", current.into_cells",
        "most_a = 60, most_b = 60, current.most_a",
        "cell = 1, cell = 2, 1…1",
        "'place = \"room\"', 'place = \"body\"\ncell = 1', body_01_c",
        "'values = [\"3\"]', 'values = [\"8\"]', a step cannot mean two things",
        "series = 1, series = 2, one for each of the 2 cells in series",
        "'[steps]', '[rest]\nbelow_a = 0.1\n[steps]', '[steps] or [rest], not both'",
    })
    void a_mistake_is_refused_with_its_key_and_reason(String right, String wrong, String said) {
        String text = SHIPPED.replace(right, wrong);

        assertThat(text).isNotEqualTo(SHIPPED);
        assertThat(refused(text)).contains(said);
    }

    @Test
    void where_the_rating_of_the_cells_holds_may_be_stated_in_a_map_as_in_a_rig_file() {
        LogMap map = ((Read.Sound<LogMap>) MapFile.read("map", SHIPPED + "\n[rating]\ntemperature_c = 23\ncut_off_v = 2.0\nmost_rate_c = 1.1\n")).value();

        assertThat(map.cells().ratedAt()).isEqualTo(new RatedAt(23, 5, 0.05, 1.1, 2.0, OptionalDouble.empty(), true));
        assertThat(refused(SHIPPED + "\n[rating]\nwithin = 2\n")).contains("rating.within", "within_k");
    }

    @Test
    void every_key_of_the_shipped_maps_is_among_those_that_list_themselves() {
        List<String> keys = KeyList.of(MapFile::map).stream().flatMap(table -> table.keys().stream()).map(KeyList.Key::name).toList();

        assertThat(SHIPPED.lines().filter(line -> line.matches("[a-z_]+ = .*")).map(line -> line.substring(0, line.indexOf(' ')))).isNotEmpty()
                .allSatisfy(key -> assertThat(keys).contains(key));
    }
}
