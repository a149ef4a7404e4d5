package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.command.Rehearsing;
import rigwarden.findings.trace.Recount;
import rigwarden.findings.trace.Reread;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.RunReader;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** What was stored of a pack, read again: with the same calibrations to the last digit, with another by just that. */
class RereadTest {
    @TempDir
    private Path folder;

    @Test
    void the_same_calibrations_give_the_same_scans_and_sums_and_another_tap_moves_two_cells_only() throws Exception {
        Path programme = Files.writeString(folder.resolve("short.toml"), ShortDischarge.text(4));
        Rehearsing.done(ShortDischarge.RIG, programme, folder.resolve("book"));
        try (RunReader reader = RunReader.open(folder.resolve("book").resolve("runs").resolve("0001.db"))) {
            Rig rig = RunFindings.rig(reader).orElseThrow();
            List<StepMark> stored = new ArrayList<>();
            List<StepMark> counted = new ArrayList<>();
            Reread same = new Reread(rig);
            Recount recount = new Recount(rig);
            Reread moved = new Reread(rig.calibrated(List.of(tapThree())));
            long cells = 0;
            try (Cycles cycles = reader.cycles()) {
                while (cycles.hasNext()) {
                    Cycle cycle = cycles.next();
                    List<StepMark> marks = RunFindings.marks(rig, cycle.events());
                    assertThat(same.of(cycle.scan())).isEqualTo(cycle.scan());
                    stored.addAll(marks);
                    counted.addAll(recount.take(new Row(cycle.scan(), marks)).marks());
                    cells += cells(rig, cycle.scan(), moved.of(cycle.scan()));
                }
            }
            assertThat(counted).hasSizeGreaterThanOrEqualTo(2).isEqualTo(stored);
            assertThat(cells).isGreaterThan(2000);
        }
    }

    /** Tap 3 read 10 mV more: cell 3 gains them, cell 4 loses them, to the 10 µV in which cells are kept, and nothing else moves; how many scans had both. */
    private static long cells(Rig rig, Scan before, Scan after) {
        boolean both = true;
        for (Channel channel : rig.channels()) {
            if (before.readings().get(channel.index()) instanceof Reading.Valid then && after.readings().get(channel.index()) instanceof Reading.Valid now) {
                double by = switch (channel.name()) {
                    case "tap_03_v", "cell_03_v" -> 0.010;
                    case "cell_04_v" -> -0.010;
                    case String _ -> 0;
                };
                assertThat(now.value() - then.value()).as(channel.name()).isCloseTo(by, within(1.5e-5));
            } else {
                both = false;
            }
        }
        return both ? 1 : 0;
    }

    private static ChannelCalibration tapThree() {
        Doubt doubt = new Doubt(9, 1e-4, 1e-5, 1e-4, 1e-4, 0, 6, 12, 1e-3);
        return new ChannelCalibration("tap_03_v", 1, 0.010, doubt, LocalDate.EPOCH, LocalDate.EPOCH.plusDays(1), OptionalDouble.empty(),
                OptionalLong.empty(), "");
    }
}
