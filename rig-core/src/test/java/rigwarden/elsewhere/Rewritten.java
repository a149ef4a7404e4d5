package rigwarden.elsewhere;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import java.util.zip.GZIPInputStream;

/** A gzipped log written anew with its lines changed or left out, the heading as it was. */
public final class Rewritten {
    private Rewritten() {}

    /** Writes it plain. */
    public static Path file(Path zipped, Path plain, Function<String, Optional<String>> line) throws IOException {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(new GZIPInputStream(Files.newInputStream(zipped)), StandardCharsets.US_ASCII));
                BufferedWriter out = Files.newBufferedWriter(plain)) {
            out.write(in.readLine() + "\n");
            for (String next = in.readLine(); next != null; next = in.readLine()) {
                Optional<String> kept = line.apply(next);
                if (kept.isPresent()) {
                    out.write(kept.get() + "\n");
                }
            }
        }
        return plain;
    }
}
