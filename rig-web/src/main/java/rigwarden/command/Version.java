package rigwarden.command;

import java.util.Map;

/** What a run is made with: a run that was broken off goes on with the same and nothing else. */
final class Version {
    static final String RIGWARDEN = "0.1.0";

    private Version() {}

    /** Name to version, of software and runtime. */
    static Map<String, String> all() {
        return Map.of("rigwarden", RIGWARDEN, "java", Runtime.version().toString());
    }
}
