package rigwarden.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/** The operator's passphrase, as a salted hash in the logbook's folder: PBKDF2 with HMAC-SHA-256 (RFC 8018). */
public final class Passphrase {
    /** Some tenths of a second on a small board: slow enough to guess against. */
    private static final int ROUNDS = 310_000;
    private static final int SALT_BYTES = 16;
    private static final int KEY_BITS = 256;
    private static final int LONGEST = 200;
    private static final String FILE = "operator";
    private static final Pattern LINE =
            Pattern.compile("pbkdf2-hmac-sha256 (\\d{1,8}) ([A-Za-z0-9+/=]{8,64}) ([A-Za-z0-9+/=]{16,64})\\s*");

    private Passphrase() {}

    /** Sets it; the file can be read by its owner only. */
    public static void set(Path folder, char[] phrase) throws IOException {
        byte[] salt = new byte[SALT_BYTES];
        new SecureRandom().nextBytes(salt);
        Base64.Encoder text = Base64.getEncoder();
        String line = "pbkdf2-hmac-sha256 " + ROUNDS + " " + text.encodeToString(salt) + " "
                + text.encodeToString(hash(phrase, salt, ROUNDS)) + "\n";
        Path fresh = Files.createTempFile(folder, FILE, ".new",
                PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        Files.writeString(fresh, line, StandardCharsets.US_ASCII);
        Files.move(fresh, folder.resolve(FILE), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /** Whether there is one. */
    static boolean isSet(Path folder) {
        return Files.isReadable(folder.resolve(FILE));
    }

    /** Whether this is it; false where there is none, or its file is not as it was written. */
    static boolean matches(Path folder, char[] phrase) {
        if (phrase.length == 0 || phrase.length > LONGEST || !isSet(folder)) {
            return false;
        }
        try {
            Matcher line = LINE.matcher(Files.readString(folder.resolve(FILE), StandardCharsets.US_ASCII));
            if (!line.matches()) {
                return false;
            }
            byte[] salt = Base64.getDecoder().decode(line.group(2));
            byte[] wanted = Base64.getDecoder().decode(line.group(3));
            return MessageDigest.isEqual(wanted, hash(phrase, salt, Integer.parseInt(line.group(1))));
        } catch (IOException | IllegalArgumentException _) {
            return false;
        }
    }

    private static byte[] hash(char[] phrase, byte[] salt, int rounds) {
        try {
            return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                    .generateSecret(new PBEKeySpec(phrase, salt, rounds, KEY_BITS))
                    .getEncoded();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("this Java lacks PBKDF2WithHmacSHA256", e);
        }
    }
}
