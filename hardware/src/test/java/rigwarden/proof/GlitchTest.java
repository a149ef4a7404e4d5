package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rigwarden.emulated.Rehearsal;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;

/**
 * Single frames with one to four bits turned, to and from either instrument, in virtual time while current flows: 200 a
 * rig by default, {@code -DargLine=-Drigwarden.glitches=5000} for ten thousand on the two rigs.
 */
class GlitchTest {
    private static final long HOUR = 3_600_000_000_000L;
    private static final long GLITCHES = Long.getLong("rigwarden.glitches", 200);
    private static final int EVERY = 60;
    private static final Program STEADY = new Program("steady", false, List.of(new Step.Pulse(1, 1, 20 * HOUR, 1.5, HOUR)));

    @ParameterizedTest
    @ValueSource(strings = {"one-cell.toml", "one-cell-modbus.toml"})
    void one_upset_frame_is_nothing(String file) throws Exception {
        Rig rig = ((Read.Sound<Rig>) RigFile.read(Bench.RIGS.resolve(file))).value();
        List<Event.Tripped> trips = new ArrayList<>();
        long done = 0;
        for (long seed = 1; done < GLITCHES; seed++) {
            Rehearsal rehearsal = new Rehearsal(rig, STEADY, seed, List.of(), Bench.NOWHERE);
            Bench.until(rehearsal, () -> rehearsal.step() == 1 && rehearsal.rig().world().amps() < -0.5);
            AtomicLong source = rehearsal.rig().glitches(0, EVERY, seed);
            AtomicLong sink = rehearsal.rig().glitches(1, EVERY, seed);
            while (!rehearsal.over() && done + source.get() + sink.get() < GLITCHES) {
                for (Event event : rehearsal.scan()) {
                    if (event instanceof Event.Tripped trip) {
                        trips.add(trip);
                    }
                }
            }
            done += source.get() + sink.get();
        }

        System.out.println(file + ": " + done + " upset frames, " + trips.size() + " trips " + trips.stream()
                .map(trip -> trip.first().rule().number() + " " + trip.first().where().name()).toList());
        assertThat(trips).isEmpty();
    }
}
