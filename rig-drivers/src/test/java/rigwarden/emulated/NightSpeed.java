package rigwarden.emulated;

import java.util.List;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;
import rigwarden.run.Event;

/** A whole night without a recorder, for its speed. Run by hand. */
final class NightSpeed {
    private static final long HOUR = 3_600_000_000_000L;

    private NightSpeed() {}

    public static void main(String[] arguments) throws Exception {
        Rig rig = TestRigs.oneCell();
        Step rest = new Step.Rest(2 * HOUR, 3 * HOUR);
        Step charge = new Step.Charge(21, 3.60, 5.25);
        Program program = new Program("night", true, List.of(charge, rest, new Step.Discharge(10.5, 2.5), rest, charge,
                rest, new Step.Discharge(52.5, 2.5), rest, new Step.Park(21, 0.4, 3.6)));
        for (int round = 0; round < 3; round++) {
            Rehearsal rehearsal = new Rehearsal(rig, program, 1 + round, List.of(), (_, _, _, _) -> { });
            long began = System.nanoTime();
            long scans = 0;
            while (!rehearsal.over()) {
                for (Event event : rehearsal.scan()) {
                    System.out.printf("%9.3f h %s%n", rehearsal.rig().clock().nanos() / 3.6e12, event);
                }
                scans++;
            }
            double seconds = (System.nanoTime() - began) * 1e-9;
            System.out.printf("%d scans in %.2f s: %.0f scans/s, %d transactions%n", scans, seconds, scans / seconds,
                    rehearsal.rig().emulatedBoard().traffic().all());
        }
    }
}
