package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;
import rigwarden.rig.TestRigs;

/** The list of keys is what the readers ask for, no more and no less. */
class KeyListTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");

    @Test
    void whatever_a_reader_asks_for_is_listed_with_the_word_on_which_it_depends() {
        List<KeyList.Table> tables = KeyList.of((page, root) -> {
            root.number("a_v", "V", 1, 2, "because");
            for (Keys keys : root.tables("thing", RefusalKind.MISSING_KEY, "things")) {
                if (keys.word("kind", List.of("plain", "odd"), "kinds differ").equals("odd")) {
                    boolean more = keys.yesOrNo("more", "or less");
                    if (more) {
                        keys.whole("times", "", 3, 4, "how often");
                    }
                }
                if (keys.has("extra")) {
                    keys.table("extra", "spare").ifPresent(inner -> inner.text("note", "to read"));
                }
            }
        });

        assertThat(tables).containsExactly(
                new KeyList.Table("", false, false, "", List.of(key("a_v", false, "1…2 V", "because", ""))),
                new KeyList.Table("thing", true, false, "things", List.of(
                        key("kind", false, "plain, odd", "kinds differ", ""),
                        key("more", false, "true or false", "or less", "kind = odd"),
                        key("times", false, "3…4", "how often", "more = true"))),
                new KeyList.Table("thing.extra", false, true, "spare",
                        List.of(key("note", false, "a text in quotes", "to read", ""))));
    }

    private static KeyList.Key key(String name, boolean optional, String allowed, String why, String with) {
        return new KeyList.Key(name, optional, allowed, why, with);
    }

    @ParameterizedTest
    @ValueSource(strings = {"one-cell.toml", "eight-cells.toml", "one-cell-spi.toml", "one-cell-modbus.toml"})
    void every_key_of_a_reference_rig_is_listed(String file) throws Exception {
        assertThat(names(KeyList.ofRig())).containsAll(written(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"one-cell-night.toml", "eight-cells-night.toml"})
    void every_key_of_a_reference_programme_is_listed(String file) throws Exception {
        assertThat(names(KeyList.ofProgram(TestRigs.eightCells()))).containsAll(written(file));
    }

    @Test
    void what_the_reference_files_do_not_use_is_listed_too() {
        assertThat(keys(KeyList.ofRig()))
                .contains("source: float_v with floats = true", "probe: cell with place = bar, body, stud", "adc.input.calibration: gain_u with ",
                        "sink: watts with kind = inverter", "path: both_directions with kind = contactor",
                        "guards: window_high_v with ", "protection: tolerance_v with ", "rating: within_k with ",
                        "rating: rated_wh with ", "sink.commands: ask_limit with ",
                        "cell: parallel with ");
        assertThat(keys(KeyList.ofProgram(TestRigs.eightCells())))
                .contains("step: until_v with kind = recover", "step: times with kind = repeat",
                        "step: hold_min with kind = balance", "step: rate_c with kind other than repeat, rest", "step: ceiling_v with kind = balance, charge, park", ": leave_empty with ");
    }

    @Test
    void nothing_is_listed_without_what_is_allowed_and_why() {
        assertThat(KeyList.ofRig()).allSatisfy(table -> assertThat(table.keys())
                .allMatch(key -> !key.allowed().isBlank() && !key.why().isBlank()));
        assertThat(KeyList.ofProgram(TestRigs.eightCells())).allSatisfy(table -> assertThat(table.keys())
                .allMatch(key -> !key.allowed().isBlank() && !key.why().isBlank()));
    }

    private static Set<String> keys(List<KeyList.Table> tables) {
        return tables.stream().flatMap(t -> t.keys().stream().map(k -> t.place() + ": " + k.name() + " with " + k.onlyWith()))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> names(List<KeyList.Table> tables) {
        return tables.stream().flatMap(t -> t.keys().stream().map(k -> t.place() + ": " + k.name()))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> written(String file) throws Exception {
        Set<String> found = new TreeSet<>();
        collect("", Toml.parse(Files.readString(RIGS.resolve(file))), found);
        assertThat(found).hasSizeGreaterThan(5);
        return found;
    }

    private static void collect(String place, TomlTable table, Set<String> found) {
        for (String key : table.keySet()) {
            String inner = place.isEmpty() ? key : place + "." + key;
            Object value = table.get(List.of(key));
            if (value instanceof TomlTable one) {
                collect(inner, one, found);
            } else if (value instanceof TomlArray array && array.size() > 0 && array.get(0) instanceof TomlTable) {
                for (int i = 0; i < array.size(); i++) {
                    collect(inner, array.getTable(i), found);
                }
            } else {
                found.add(place + ": " + key);
            }
        }
    }
}
