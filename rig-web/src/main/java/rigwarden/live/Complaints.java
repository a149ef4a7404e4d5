package rigwarden.live;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Pattern;

/** What a rig's instruments complained of lately. Any thread; nobody waits. */
public final class Complaints {
    /** As many as a person reads beside what matters more. */
    private static final int KEPT = 3;
    private static final int LONGEST = 200;
    private static final Pattern CONTROL = Pattern.compile("\\p{Cntrl}+");

    /**
     * One of them.
     *
     * @param nanos when it was heard last, on the clock of the scans
     * @param words name of the instrument and its own words, without control characters
     */
    public record Complaint(long nanos, String words) {}

    private final AtomicReference<List<Complaint>> newest = new AtomicReference<>(List.of());

    /**
     * Takes one; the same words again only renew its time.
     *
     * @return it, as it is kept
     */
    public Complaint take(String words, long nanos) {
        String plain = CONTROL.matcher(words).replaceAll(" ").strip();
        Complaint one = new Complaint(nanos, plain.substring(0, Math.min(plain.length(), LONGEST)));
        newest.updateAndGet(before -> {
            List<Complaint> now = new ArrayList<>(List.of(one));
            before.stream().filter(kept -> !kept.words().equals(one.words())).limit(KEPT - 1L).forEach(now::add);
            return List.copyOf(now);
        });
        return one;
    }

    /** The newest first. */
    public List<Complaint> newest() {
        return newest.get();
    }
}
