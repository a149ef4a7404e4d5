package rigwarden.command;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Rehearsal;
import rigwarden.live.Laying;
import rigwarden.logbook.RunWriter;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;
import rigwarden.warden.Scan;

/** Who carries the loose probe in a rehearsal: lays it where the page says, and says where a mishap of the rehearsal laid it. */
final class EmulatedHand {
    private final AtomicReference<Optional<Spot>> asked = new AtomicReference<>(Optional.empty());
    private final Laying laying = new Laying((spot, _) -> {
        asked.set(Optional.of(spot));
        return true;
    });
    private final boolean carries;
    private Optional<Spot> kept = Optional.empty();

    EmulatedHand(Rig rig) {
        carries = !rig.channels(Role.LOOSE).isEmpty();
    }

    /** What the page is given. */
    Laying laying() {
        return laying;
    }

    /** Before a scan. Control thread only. */
    void lay(Rehearsal rehearsal) {
        if (carries && asked.get().isPresent()) {
            asked.getAndSet(Optional.empty()).ifPresent(spot -> rehearsal.inflict(new BoardFault.LooseLaid(spot)));
            kept = Optional.empty();
        }
    }

    /** After it. What cannot be written down yet is written down later. */
    void keep(Rehearsal rehearsal, RunWriter writer, Scan scan) {
        Optional<Spot> laid = carries ? rehearsal.rig().laid() : Optional.empty();
        if (laid.isPresent() && !laid.equals(kept) && writer.note("spot", laid.get().name(), scan)) {
            kept = laid;
            laying.laid(laid.get(), scan.nanos());
        }
    }
}
