package rigwarden.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Rehearsal;
import rigwarden.live.Desk;
import rigwarden.live.Live;
import rigwarden.live.Watched;
import rigwarden.pack.Fault;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;

/** Notices beside a running loop. */
@Timeout(120)
class NoticesTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");
    private static final int SCANS = 4000;

    private final List<String> terminal = Collections.synchronizedList(new ArrayList<>());

    /** Events of a night that trips, with or without somebody who is told. */
    private List<Event> night(List<Route> routes) throws Exception {
        Read.Sound<Rig> rig = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
        Program program = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), rig)).value();
        List<Event> events = new ArrayList<>();
        Live live = new Live(rig.value(), program, (_, _, _, _) -> { }).start();
        Notices notices = new Notices(new NoticePlan(1, 4, routes), InstantSource.system(), terminal::add);
        notices.watch(new Watched(1, rig.value(), program, live, new Desk(), true, 1, Path.of("1.db")));
        Rehearsal rehearsal = new Rehearsal(rig.value(), program, 1, List.of(), live);
        for (int scan = 0; scan < SCANS; scan++) {
            if (scan == SCANS - 200) {
                rehearsal.inflict(new BoardFault.InWorld(new Fault.LoopOpens()));
            }
            events.addAll(rehearsal.scan());
        }
        live.close();
        notices.close();
        return events;
    }

    private static List<String> kinds(List<Event> events) {
        return events.stream().map(e -> e.getClass().getSimpleName()).toList();
    }

    @Test
    void a_trip_reaches_the_phone_and_the_last_words_follow_it() throws Exception {
        TestRoute phone = new TestRoute();

        night(List.of(phone));

        assertThat(phone.sent).anyMatch(t -> t.startsWith("REHEARSAL: TRIPPED"));
        assertThat(phone.sent.subList(phone.sent.size() - 2, phone.sent.size()))
                .satisfiesExactly(t -> assertThat(t).contains("the last check-in"), t -> assertThat(t).isEqualTo("closed"));
        assertThat(terminal).isEmpty();
    }

    @Test
    void a_way_that_hangs_for_ever_holds_neither_the_loop_up_nor_the_other_way() throws Exception {
        CountDownLatch never = new CountDownLatch(1);
        TestRoute hangs = new TestRoute();
        hangs.end = _ -> {
            try {
                never.await();
            } catch (InterruptedException _) {
                Thread.currentThread().interrupt();
            }
            return new Delivery.Failed("hung", false);
        };
        TestRoute phone = new TestRoute();

        List<Event> beside = night(List.of(hangs, phone));

        assertThat(kinds(beside)).isEqualTo(kinds(night(List.of(new TestRoute()))));
        assertThat(phone.sent).anyMatch(t -> t.startsWith("REHEARSAL: TRIPPED"));
        assertThat(hangs.sent).as("sent to the one that hangs, and closed").hasSize(2);
        assertThat(terminal).anyMatch(line -> line.contains("not delivered by phone"));
    }
}
