package rigwarden.page;

import rigwarden.loop.Pacer;
import rigwarden.loop.RealClock;

/** A loop that does nothing but wake up, in a process of its own: what this machine's timer can do at this time. */
public final class BareLoop {
    private BareLoop() {}

    /** Wakes up each {@code args[0]} ns for {@code args[1]} s and prints the worst lateness, s. */
    public static void main(String[] args) {
        Pacer pacer = Pacer.ofScan(new RealClock(), Long.parseLong(args[0]));
        long until = System.nanoTime() + Long.parseLong(args[1]) * 1_000_000_000L;
        while (System.nanoTime() - until < 0) {
            pacer.await();
        }
        System.out.println(pacer.worstSeconds());
    }
}
