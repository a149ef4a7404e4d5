package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import rigwarden.rig.Device;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** The wiring of the two reference rigs. */
class WiringTest {
    private static final Path RIGS = Path.of("../hardware/rigs");
    private static final List<String> NAMES = List.of("one-cell", "eight-cells");
    private static final double WIDEST_LETTER = 0.62;

    private record Words(double left, double foot, double right, double height, String said) {
        boolean over(Words other) {
            return left < other.right && other.left < right && foot - height < other.foot && other.foot - other.height < foot;
        }
    }

    @Test
    void every_input_probe_device_and_line_of_the_rig_file_has_its_connection() throws IOException {
        for (String name : NAMES) {
            Rig rig = rig(text(name));
            List<Connection> all = Wiring.of(rig);

            for (VoltageInput input : rig.inputs()) {
                assertThat(all).anyMatch(c -> c.note().startsWith(input.name() + ";") && c.to().endsWith("AIN" + input.input()));
            }
            for (Probe probe : rig.probes()) {
                assertThat(all).anyMatch(c -> c.label().startsWith("T") && c.note().startsWith(probe.name()));
            }
            for (Device device : rig.devices()) {
                assertThat(all).anyMatch(c -> c.to().equals(device.name() + ", plus"));
                assertThat(all).anyMatch(c -> c.from().equals("controller, line " + device.relay()));
            }
            assertThat(all.stream().map(Connection::label)).doesNotHaveDuplicates();
        }
    }

    @Test
    void a_cell_window_has_leads_of_its_own_with_its_edges_where_one_is_fitted() throws IOException {
        List<Connection> bench = Wiring.of(rig(text("one-cell")));

        assertThat(bench).filteredOn(c -> c.to().startsWith("cell window of cell 1")).hasSize(2)
                .allMatch(c -> c.conductor().contains("0.5 A fuse")).anyMatch(c -> c.note().contains("above 3.75 V and below 2.30 V"));
        assertThat(Wiring.of(rig(text("eight-cells")))).noneMatch(c -> c.to().contains("cell window"));
    }

    @Test
    void chips_on_SPI_are_named_by_their_selects_and_lines_of_an_expander_by_its_pins() throws IOException {
        List<Connection> all = Wiring.of(rig(text("one-cell-spi")));

        assertThat(all).extracting(Connection::to).contains("INA226, bus 1, 0x40, VBUS", "ADS1220, SPI bus 0, select by line 17, AIN0",
                "MAX31856, SPI bus 0, select by line 4", "MAX31856, SPI bus 0, select 0", "expander box, GPB0");
        assertThat(all).anyMatch(c -> c.from().equals("expander box, GPA0") && c.to().equals("K1, coil transistor"));
        assertThat(all).anyMatch(c -> c.from().equals("controller, line 27") && c.note().equals("ready"));
        assertThat(all.stream().map(Connection::label)).doesNotHaveDuplicates();
    }

    @Test
    void the_upper_island_s_ground_is_the_stud_under_its_lowest_cell() throws IOException {
        List<Connection> all = Wiring.of(rig(text("eight-cells")));

        assertThat(all).anyMatch(c -> c.note().equals("tap_06_v; divider 2 : 1; ground is cell 4, + stud"));
        assertThat(all).anyMatch(c -> c.note().equals("tap_02_v; divider 2 : 1; ground is B−"));
    }

    @Test
    void eight_cells_in_series_have_seven_bars_from_plus_to_minus() throws IOException {
        List<Connection> bars = Wiring.of(rig(text("eight-cells"))).stream().filter(c -> c.conductor().startsWith("bars")).toList();

        assertThat(bars).hasSize(7);
        assertThat(bars.getFirst()).extracting(Connection::from, Connection::to).containsExactly("cell 1, + stud", "cell 2, − stud");
    }

    @Test
    void no_words_of_a_drawing_lie_over_others_or_run_off_the_sheet_and_the_cautions_are_on_it() throws Exception {
        String longName = "x".repeat(40) + " & <bench> of the hut on the mountain";
        for (String name : NAMES) {
            Rig rig = rig(text(name).replaceFirst("name = \"[^\"]*\"", "name = \"" + longName + "\""));
            for (String drawing : List.of(WiringDrawing.power(rig, Wiring.of(rig), "abc"), WiringDrawing.stop(rig, Wiring.of(rig), "abc"))) {
                List<Words> words = words(drawing);
                String said = String.join(" ", words.stream().map(Words::said).toList());

                assertThat(said).contains(CautionWords.all()).contains("& <bench>");
                for (int one = 0; one < words.size(); one++) {
                    assertThat(words.get(one).right()).as(words.get(one).said()).isLessThanOrEqualTo(Ink.WIDTH);
                    for (int other = one + 1; other < words.size(); other++) {
                        assertThat(words.get(one).over(words.get(other))).as(words.get(one) + " over " + words.get(other)).isFalse();
                    }
                }
            }
        }
    }

    private static List<Words> words(String drawing) throws Exception {
        Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(drawing)));
        NodeList texts = document.getElementsByTagName("text");
        List<Words> words = new ArrayList<>();
        for (int at = 0; at < texts.getLength(); at++) {
            Element text = (Element) texts.item(at);
            double size = Double.parseDouble(text.getAttribute("font-size"));
            double left = Double.parseDouble(text.getAttribute("x"));
            String said = text.getTextContent();
            words.add(new Words(left, Double.parseDouble(text.getAttribute("y")), left + said.length() * size * WIDEST_LETTER, size, said));
        }
        return words;
    }

    private static String text(String name) throws IOException {
        return Files.readString(RIGS.resolve(name + ".toml"));
    }

    private static Rig rig(String text) {
        return switch (RigFile.read("rig.toml", text)) {
            case Read.Sound<Rig> sound -> sound.value();
            case Read.Refused<Rig> refused -> throw new AssertionError(refused.refusals().toString());
        };
    }
}
