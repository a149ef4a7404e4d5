package rigwarden.marks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Method;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Kind;

/** The one table of what this module's checks stand on; a finding without a mark fails the build. */
class MarksTest {
    /** Parts of the numerical kit that must be checked against something, besides the findings. */
    private static final List<String> KIT = List.of("straight line", "curve", "correlated inputs", "budget", "random draws", "thermocouple");

    private record Row(Mark mark, Method test) {
        String line() {
            return String.format(Locale.ROOT, "%-18s %-16s %-78s %s.%s", mark.of(), mark.standing().words(), mark.source(),
                    test.getDeclaringClass().getSimpleName(), test.getName());
        }
    }

    @Test
    void every_finding_has_a_mark_and_the_table_is_printed() throws IOException, URISyntaxException {
        List<Row> rows = rows();

        List<String> lines = rows.stream().map(Row::line).sorted().toList();
        lines.forEach(System.out::println);
        Files.write(Path.of("target", "marks.txt"), lines);
        assertThat(rows).extracting(row -> row.mark().of()).containsAll(Arrays.stream(Kind.values()).map(Kind::word).toList())
                .containsAll(KIT);
        assertThat(rows).allSatisfy(row -> assertThat(row.mark().source()).as(row.line()).isNotBlank());
    }

    @Test
    void a_mark_is_of_something_that_there_is() throws IOException, URISyntaxException {
        List<String> known = Stream.concat(KIT.stream(), Arrays.stream(Kind.values()).map(Kind::word)).toList();

        assertThat(rows()).extracting(row -> row.mark().of()).allSatisfy(of -> assertThat(known).contains(of));
    }

    private static List<Row> rows() throws IOException, URISyntaxException {
        Path root = Path.of(MarksTest.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        try (Stream<Path> files = Files.walk(root.resolve("rigwarden"))) {
            return files.map(root::relativize).map(Path::toString).filter(name -> name.endsWith("Test.class"))
                    .map(name -> name.substring(0, name.length() - ".class".length()).replace('/', '.').replace('\\', '.'))
                    .map(MarksTest::loaded).flatMap(type -> Arrays.stream(type.getDeclaredMethods()))
                    .flatMap(test -> Arrays.stream(test.getAnnotationsByType(Mark.class)).map(mark -> new Row(mark, test)))
                    .toList();
        }
    }

    private static Class<?> loaded(String name) {
        try {
            return Class.forName(name);
        } catch (ClassNotFoundException e) {
            throw new AssertionError(e);
        }
    }
}
