package rigwarden.page;

import java.security.SecureRandom;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/** Who is signed in: random tokens in memory, each good for half an hour after its last use. */
final class Sessions {
    static final long LASTS_NANOS = 1_800_000_000_000L;
    private static final int BYTES = 32;
    private static final int MOST = 32;

    private final LongSupplier nanos;
    private final SecureRandom random = new SecureRandom();
    private final Map<String, Long> until = new LinkedHashMap<>();

    Sessions(LongSupplier nanos) {
        this.nanos = nanos;
    }

    /** A new one; the oldest goes when there are too many. */
    synchronized String open() {
        byte[] bytes = new byte[BYTES];
        random.nextBytes(bytes);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        if (until.size() >= MOST) {
            until.remove(until.keySet().iterator().next());
        }
        until.put(token, nanos.getAsLong() + LASTS_NANOS);
        return token;
    }

    /** Whether it holds; if so it holds for another while. */
    synchronized boolean holds(String token) {
        Long end = token == null ? null : until.get(token);
        if (end == null) {
            return false;
        }
        if (nanos.getAsLong() - end >= 0) {
            until.remove(token);
            return false;
        }
        until.put(token, nanos.getAsLong() + LASTS_NANOS);
        return true;
    }

    synchronized void close(String token) {
        until.remove(token);
    }
}
