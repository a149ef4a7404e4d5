package rigwarden.paper;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a table's columns mean, in a file beside it: CSV on the Web, W3C Recommendation of 17 December 2015 (Metadata Vocabulary for
 * Tabular Data; from memory). Units are by UCUM, as the property {@code ucumCode} of the open vocabulary QUDT (from memory).
 *
 * @param title of the table
 * @param description of it
 * @param columns in order
 */
record CsvMetadata(String title, String description, List<Column> columns) {
    private static final String UCUM = "http://qudt.org/schema/qudt/ucumCode";

    /** Where a reader looks for it: the table's own name with {@code -metadata.json} after it. */
    static Path beside(Path csv) {
        return csv.resolveSibling(csv.getFileName() + "-metadata.json");
    }

    /**
     * Writes it beside its table.
     *
     * @return the file
     * @throws IOException when it cannot be written
     */
    Path write(Path csv) throws IOException {
        Path file = beside(csv);
        new ObjectMapper().writerWithDefaultPrettyPrinter().writeValue(file.toFile(), of(String.valueOf(csv.getFileName())));
        return file;
    }

    private Map<String, Object> of(String url) {
        Map<String, Object> table = new LinkedHashMap<>();
        table.put("@context", List.of("http://www.w3.org/ns/csvw", Map.of("@language", "en")));
        table.put("url", url);
        table.put("dc:title", title);
        table.put("dc:description", description);
        table.put("dialect", dialect());
        table.put("tableSchema", Map.of("columns", columns.stream().map(CsvMetadata::column).toList()));
        return table;
    }

    /** RFC 4180 with a header, as it is written. */
    private static Map<String, Object> dialect() {
        Map<String, Object> dialect = new LinkedHashMap<>();
        dialect.put("encoding", "utf-8");
        dialect.put("delimiter", ",");
        dialect.put("quoteChar", "\"");
        dialect.put("doubleQuote", true);
        dialect.put("lineTerminators", List.of("\r\n"));
        dialect.put("header", true);
        dialect.put("headerRowCount", 1);
        dialect.put("trim", false);
        return dialect;
    }

    private static Map<String, Object> column(Column column) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", column.name());
        map.put("titles", column.title());
        map.put("datatype", switch (column.type()) {
            case NOT_NEGATIVE -> Map.of("base", column.type().base(), "minimum", "0");
            case NUMBER, COUNT, WORDS -> column.type().base();
        });
        map.put("required", column.required());
        map.put("null", "");
        map.put("dc:description", column.description());
        if (!column.ucum().isEmpty()) {
            map.put(UCUM, column.ucum());
        }
        if (!column.property().isEmpty()) {
            map.put("propertyUrl", column.property());
        }
        return map;
    }
}
