package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.Fault;
import rigwarden.pack.Node;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** The reference pack with a probe that is carried about, through its chip and the real driver: it follows where it is laid, and trips nothing. */
class LooseProbeNightTest {
    private static final int INVERTER = 2;
    private static final long HOUR = 3_600_000_000_000L;
    private static Rig rig;
    private static Rehearsal flowing;
    private Scan latest;
    private final List<Event> told = new ArrayList<>();

    @BeforeAll
    static void bring_the_pack_into_a_discharge() throws IOException, BusFailure {
        String text = Files.readString(Bench.RIGS.resolve("eight-cells.toml")).replace("[panel]", """
                [[probe]]
                name = "loose_c"
                place = "loose"
                bus = 5
                address = 0x67
                uncertainty_k = 1.8
                lag_s = 8
                period_ms = 200

                [panel]""");
        rig = ((Read.Sound<Rig>) RigFile.read("eight-cells.toml", text)).value();
        Program program = new Program("discharge", false, List.of(new Step.HeatRun(INVERTER, rig.devices().get(INVERTER).maxAmps(), 2.50, 3 * HOUR)));
        flowing = new Rehearsal(rig, program, 7, List.of(), Bench.NOWHERE);
        flowing.inflict(new BoardFault.InWorld(new Fault.LooseJoint(2, true, 0.3e-3)));
        Bench.until(flowing, () -> Bench.flowing(flowing, 1));
        Bench.seconds(flowing, 300);
        assertThat(flowing.rig().world().amps()).as("A, what the heater takes").isLessThan(-50);
    }

    private Rehearsal from() {
        return flowing.copy((scan, _, _, events) -> {
            latest = scan;
            told.addAll(events);
        });
    }

    private double celsius() {
        Channel loose = rig.channel(Role.LOOSE);
        return ((Reading.Valid) latest.readings().get(loose.index())).value();
    }

    @Test
    void it_follows_from_spot_to_spot_and_falls_to_the_rooms_warmth() {
        Rehearsal night = from();
        for (String name : List.of("bar 3–4", "cell 8, + stud", "cell 5, body", "shunt", "contactor")) {
            Spot spot = Spot.named(rig, name).orElseThrow();
            night.inflict(new BoardFault.LooseLaid(spot));
            Bench.seconds(night, 60);

            assertThat(night.rig().laid()).contains(spot);
            assertThat(celsius()).as(name).isCloseTo(night.rig().world().beadCelsius(rig.probes().size() - 1), within(1.8));
        }
        double warm = night.rig().world().celsius(Node.CONTACTOR);
        assertThat(warm - night.rig().world().celsius(Node.ROOM)).as("K over the room before it drops").isGreaterThan(0.5);

        night.inflict(new BoardFault.LooseDrops());
        Bench.seconds(night, 90);

        assertThat(night.rig().world().beadCelsius(rig.probes().size() - 1))
                .isCloseTo(night.rig().world().celsius(Node.ROOM), within(0.05));
    }

    @Test
    void nothing_trips_when_it_drops_drifts_or_its_wire_opens_and_the_open_wire_is_told_once() {
        Rehearsal night = from();
        int probe = rig.probes().size() - 1;
        night.inflict(new BoardFault.LooseLaid(Spot.named(rig, "bar 3–4").orElseThrow()));
        Bench.seconds(night, 30);
        night.inflict(new BoardFault.LooseDrops());
        night.inflict(new BoardFault.ProbeDrifts(probe, 60));
        Bench.seconds(night, 30);
        assertThat(told).noneMatch(event -> event instanceof Event.Tripped || event instanceof Event.Warned);

        night.inflict(new BoardFault.OpenProbe(probe));
        Bench.seconds(night, 60);

        assertThat(night.rig().world().amps()).as("A, still flowing").isLessThan(-50);
        assertThat(told).noneMatch(event -> event instanceof Event.Tripped);
        assertThat(told).filteredOn(event -> event instanceof Event.Warned).singleElement()
                .isInstanceOfSatisfying(Event.Warned.class, event -> assertThat(event.warning().rule().number()).isEqualTo(58));
    }

    @Test
    void a_fixed_probe_in_the_same_place_trips() {
        Rehearsal night = from();
        night.inflict(new BoardFault.OpenProbe(rig.probes().stream().map(p -> p.name()).toList().indexOf("bar_03_c")));

        for (int i = 0; i < 100 && told.stream().noneMatch(event -> event instanceof Event.Tripped); i++) {
            night.scan();
        }

        assertThat(told).anyMatch(event -> event instanceof Event.Tripped);
    }
}
