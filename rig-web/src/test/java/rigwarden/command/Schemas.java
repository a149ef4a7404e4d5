package rigwarden.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.Error;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;

/** Holds a document against a schema of this project, by a validator that knows neither. */
final class Schemas {
    private Schemas() {}

    /** What is wrong with it; empty when nothing is. */
    static List<String> faults(String schema, JsonNode document) throws IOException {
        try (InputStream in = Objects.requireNonNull(Schemas.class.getResourceAsStream("/" + schema), schema)) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(in).validate(document).stream()
                    .map(Error::toString).toList();
        }
    }
}
