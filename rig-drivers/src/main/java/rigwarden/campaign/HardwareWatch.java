package rigwarden.campaign;

import java.util.EnumSet;
import java.util.Set;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.World;
import rigwarden.warden.Orders;

/** Notes which of the guards that need no computer acted while the warden still had something on. */
final class HardwareWatch {
    private final Set<Outcome.Guard> acted = EnumSet.noneOf(Outcome.Guard.class);
    private final boolean openBefore;
    private boolean fed;

    /** For a case that begins from this rehearsal's state. */
    HardwareWatch(Rehearsal rehearsal) {
        openBefore = rehearsal.rig().world().protectionOpen();
    }

    /** Looks after each scan, until the warden has tripped. */
    void look(Rehearsal rehearsal) {
        World world = rehearsal.rig().world();
        note(rehearsal.rig().windowOpened(), Outcome.Guard.WINDOW);
        note(world.protectionOpen() && !openBefore, Outcome.Guard.PROTECTION);
        note(world.fuseBlown(), Outcome.Guard.FUSE);
        note(rehearsal.rig().ownLimitReached(), Outcome.Guard.OWN_LIMIT);
        boolean beats = rehearsal.loop().standing().inForce() instanceof Orders.Energised on && on.beats();
        boolean feed = world.coilFeed();
        note(beats && fed && !feed && world.loopClosed(), Outcome.Guard.HEARTBEAT);
        fed = beats && feed;
    }

    private void note(boolean seen, Outcome.Guard guard) {
        if (seen) {
            acted.add(guard);
        }
    }

    Set<Outcome.Guard> acted() {
        return Set.copyOf(acted);
    }
}
