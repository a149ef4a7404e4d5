package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class CaseFileTest {
    private static final List<FaultWords> KNOWN = List.of(
            new FaultWords("joint loosens", "mohm", 20, List.of("cell 1 positive", "cell 1 negative")),
            new FaultWords("contact welds", "", 0, List.of("contactor")));
    private static final String GOOD = """
            [[case]]
            name = "a joint, then a weld"
            minutes = 20

            [[case.fault]]
            fault = "joint loosens"
            place = "cell 1 positive"
            size = 2
            step = 3
            after_s = 60

            [[case.fault]]
            fault = "contact welds"
            place = "contactor"
            after_s = 5
            """;

    private static Read<List<WrittenCase>> read(String text) {
        return CaseFile.read("cases.toml", text, KNOWN, 4);
    }

    private static void refused(String old, String replacement, RefusalKind kind, String says) {
        assertThat(GOOD).contains(old);
        Read<List<WrittenCase>> read = read(GOOD.replace(old, replacement));
        assertThat(read).isInstanceOf(Read.Refused.class);
        List<Refusal> refusals = ((Read.Refused<List<WrittenCase>>) read).refusals();
        assertThat(refusals).as("one message, not several").hasSize(1);
        assertThat(refusals.getFirst().kind()).isEqualTo(kind);
        assertThat(refusals.getFirst().print()).contains("cases.toml:").contains(says);
    }

    @Test
    void a_fault_that_comes_again_and_again_is_written_once() {
        Read<List<WrittenCase>> read = read(GOOD.replace("after_s = 5", "after_s = 5\ntimes = 3\nevery_s = 0.5"));

        assertThat(((Read.Sound<List<WrittenCase>>) read).value().getFirst().faults()).extracting(WrittenCase.Fault::afterSeconds)
                .containsExactly(60.0, 5.0, 5.5, 6.0);
    }

    @Test
    void a_case_has_its_faults_with_place_size_and_time() {
        assertThat(read(GOOD)).isEqualTo(new Read.Sound<>(List.of(new WrittenCase("a joint, then a weld", 20, List.of(
                new WrittenCase.Fault("joint loosens", "cell 1 positive", 2, 3, 60),
                new WrittenCase.Fault("contact welds", "contactor", 0, 0, 5)))), List.of()));
    }

    @Test
    void what_is_wrong_is_refused_with_one_message() {
        refused("\"joint loosens\"", "\"joint lossens\"", RefusalKind.UNKNOWN_WORD, "joint loosens");
        refused("\"cell 1 positive\"", "\"cell 9 positive\"", RefusalKind.UNKNOWN_WORD, "cell 1 positive, cell 1 negative");
        refused("size = 2", "size = 30000", RefusalKind.OUT_OF_RANGE, "0…20");
        refused("size = 2\n", "", RefusalKind.MISSING_KEY, "size is missing");
        refused("step = 3", "step = 5", RefusalKind.OUT_OF_RANGE, "1…4");
        refused("after_s = 5", "after_s = 5\ntimes = 1\nevery_s = 2", RefusalKind.OUT_OF_RANGE, "times");
        refused("after_s = 5", "after_s = 5\nevery_s = 2", RefusalKind.UNKNOWN_KEY, "every_s");
        refused("after_s = 5", "after_s = \"soon\"", RefusalKind.WRONG_TYPE, "after_s");
        refused("minutes = 20\n", "", RefusalKind.MISSING_KEY, "minutes is missing");
        refused("place = \"contactor\"", "place = \"contactor\"\nsize = 1", RefusalKind.UNKNOWN_KEY, "size");
        refused("[[case]]", "[[case]", RefusalKind.NOT_TOML, "TOML");
    }

    @Test
    void a_file_without_a_case_and_a_case_without_a_fault_are_refused() {
        assertThat(read("")).isInstanceOf(Read.Refused.class);
        assertThat(read("[[case]]\nname = \"x\"\nminutes = 5\n")).isInstanceOf(Read.Refused.class);
        assertThat(read("case = []")).isInstanceOf(Read.Refused.class);
    }
}
