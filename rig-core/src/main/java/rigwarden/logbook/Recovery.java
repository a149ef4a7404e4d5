package rigwarden.logbook;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** What can be said and done about a run file that its process left behind. */
final class Recovery {
    private static final int BLOCK = 1 << 16;

    private Recovery() {}

    /** Reads how the run ended, then seals the file if it is whole; a damaged one is left as it is. */
    static Interrupted recover(int number, Path file) {
        Interrupted found;
        try (RunReader reader = RunReader.open(file)) {
            Optional<String> fault = reader.integrity();
            OptionalLong scan = reader.lastScan();
            StoredOrders orders = reader.lastOrders();
            OptionalInt step = reader.openStep();
            found = new Interrupted(number, scan, orders, step, fault, words(number, scan, orders, step, fault));
        } catch (LogbookException e) {
            return unreadable(number, e.getMessage());
        }
        if (found.fault().isPresent()) {
            return found;
        }
        try {
            Files.deleteIfExists(RunFile.ballastOf(file));
            seal(file);
            return found;
        } catch (SQLException | IOException e) {
            String fault = "the file cannot be closed: " + e.getMessage();
            return new Interrupted(number, found.lastScan(), found.orders(), found.step(), Optional.of(fault),
                    found.words() + " " + fault);
        }
    }

    private static void seal(Path file) throws SQLException {
        if (!Files.isWritable(file)) {
            return;
        }
        try (Connection connection = Sqlite.write(file)) {
            RunFile.seal(file, connection);
        }
    }

    private static Interrupted unreadable(int number, String why) {
        return new Interrupted(number, OptionalLong.empty(), StoredOrders.OFF, OptionalInt.empty(), Optional.of(why),
                "Run " + number + " was interrupted and cannot be read. " + why);
    }

    private static String words(
            int number, OptionalLong scan, StoredOrders orders, OptionalInt step, Optional<String> fault) {
        String where = step.isPresent() ? "in step " + step.getAsInt() : "outside any step";
        String when = scan.isPresent() ? "after scan " + scan.getAsLong() : "before its first scan";
        return "Run " + number + " was interrupted " + where + " " + when + "; orders in force were: "
                + orders.words() + "." + fault.map(found -> " Its file is damaged: " + found).orElse("");
    }

    /** SHA-256 of a text in UTF-8, hexadecimal. */
    static String sha256(String text) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("this runtime has no SHA-256", e);
        }
    }

    /** SHA-256 of a file, hexadecimal. */
    static String sha256(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] block = new byte[BLOCK];
            for (int read = in.read(block); read >= 0; read = in.read(block)) {
                digest.update(block, 0, read);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IOException("this runtime has no SHA-256", e);
        }
    }
}
