package rigwarden.proof;

import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.Rehearsal;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** The reference rig whose probes and taps are on SPI, whose shunt monitor sums nothing and whose panel is an expander's. */
final class SpiBench {
    static final Rig RIG = ((Read.Sound<Rig>) RigFile.read(Bench.RIGS.resolve("one-cell-spi.toml"))).value();
    /** Empty at the highest rate, a minute's rest, and parked at half of it: an hour in all. */
    static final Program SHORT = new Program("short", false, List.of(
            new Step.Discharge(1, 94, 2.50),
            new Step.Rest(60_000_000_000L, 120_000_000_000L),
            new Step.Park(0, 52, 0.3, 3.60)));

    private SpiBench() {}

    static Rehearsal rehearsal(long seed, Recorder recorder) {
        try {
            return new Rehearsal(RIG, SHORT, seed, List.of(), recorder);
        } catch (BusFailure e) {
            throw new AssertionError(e);
        }
    }

    /** A minute into the discharge. */
    static Rehearsal discharging(long seed) {
        Rehearsal rehearsal = rehearsal(seed, Bench.NOWHERE);
        Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 1));
        Bench.seconds(rehearsal, 60);
        return rehearsal.copy(Bench.NOWHERE);
    }
}
