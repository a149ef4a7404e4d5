package rigwarden.command;

import com.pi4j.context.Context;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import rigwarden.bench.Agents;
import rigwarden.bench.OwnReadings;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.bus.RealBoard;
import rigwarden.calibration.Calibrating;
import rigwarden.calibration.Taking;
import rigwarden.loop.Pacer;
import rigwarden.loop.RealClock;
import rigwarden.rig.Rig;
import rigwarden.serial.InstrumentAgent;
import rigwarden.warden.Scan;

/** A real rig that is only read: its outputs are claimed low and stay low, its instruments are not spoken to. */
final class StillRig implements AutoCloseable {
    private static final Path DEVICES = Path.of("/dev");

    private final Context board;
    private final Taking taking;

    private StillRig(Context board, Rig rig, String channel) throws BusFailure {
        this.board = board;
        RealClock clock = new RealClock();
        Pacer pacer = Pacer.ofScan(clock, rig.scanNanos());
        Agents nobody = new Agents(rig.devices().stream().map(_ -> Optional.<InstrumentAgent>empty()).toList(), false);
        RigBench bench = RigBench.start(rig, board, clock, nobody, new OwnReadings(() -> 0, () -> 0, pacer::lateSeconds));
        taking = new Taking(rig, channel, () -> next(pacer, bench));
    }

    private static Scan next(Pacer pacer, RigBench bench) {
        pacer.await();
        return bench.take();
    }

    /** Claims the rig; nothing is switched. */
    static StillRig open(Rig rig, String channel) throws BusFailure {
        Context board = RealBoard.open(rig.nodes(), DEVICES, rig.panel().controller());
        boolean ready = false;
        try {
            StillRig still = new StillRig(board, rig, channel);
            ready = true;
            return still;
        } finally {
            if (!ready) {
                board.shutdown();
            }
        }
    }

    Taking taking() {
        return taking;
    }

    /** What belongs to all points. */
    Calibrating.Seen seen() {
        return new Calibrating.Seen(taking.shuntCelsius(), OptionalLong.empty());
    }

    @Override
    public void close() {
        board.shutdown();
    }
}
