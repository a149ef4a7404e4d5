package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.ChipFault;
import rigwarden.emulated.ChipPlace;
import rigwarden.emulated.Rehearsal;
import rigwarden.emulated.WireError;
import rigwarden.findings.StepFinding;
import rigwarden.findings.Tally;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.logbook.StoredOrders;
import rigwarden.loop.Recorder;
import rigwarden.pack.World;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** A short night of the bench on SPI on the real drivers: its numbers against the model's truth, its replay, its copies. */
class SpiNightTest {
    private static final Rig RIG = SpiBench.RIG;
    private static final long SEED = 10;
    /** A part whose shunt and chip are both at their limits, 0.25 and 0.1 %, is beyond the 0.31 % that 95 % of them keep. */
    private static final double AT_THE_LIMITS = 1.2;
    /** Scans between two looks at the truth. */
    private static final int LOOK = 500;

    @TempDir
    private Path folder;

    private Scan latest = new Scan(0, 0, List.of());
    private final Tally tally = new Tally(RIG);
    /** Farthest that a channel was from the truth, as a share of its expanded uncertainty. */
    private final Map<String, Double> farthest = new TreeMap<>();

    @Test
    void a_short_night_agrees_with_the_truth_within_its_stated_uncertainty_and_replays_to_the_same_orders() throws Exception {
        Path file = folder.resolve("night.db");
        RunAbout about = new RunAbout("", "", Map.of(), "emulated", SEED, true, "rehearsal", 0);
        double[] truth;
        try (RunWriter writer = RunWriter.create(file, about, RIG.channels(), RunSettings.USUAL.withBallast(0), _ -> { })) {
            truth = night(SpiBench.rehearsal(SEED, (scan, inbox, orders, events) -> {
                latest = scan;
                tally.scan(scan);
                while (writer.fill() > 0.5) {
                    Thread.onSpinWait();
                }
                writer.offer(scan, inbox, orders, events);
            }));
            while (writer.fill() > 0) {
                Thread.onSpinWait();
            }
            assertThat(writer.lostRows()).as("rows that were not stored").isZero();
        }

        for (StepFinding step : tally.steps()) {
            System.out.printf("step %d %-9s %8.4f Ah ± %.4f Ah, truth %8.4f Ah%n", step.index(), step.kind(),
                    step.chargeAmpHours().value(), step.chargeAmpHours().expanded(), truth[step.index()]);
        }
        System.out.println("farthest from the truth, over the stated uncertainty: " + farthest);
        for (int step : new int[] {1, 3}) {
            StepFinding found = tally.steps().stream().filter(s -> s.index() == step).findFirst().orElseThrow();
            double value = found.chargeAmpHours().value();
            double expanded = found.chargeAmpHours().expanded();
            assertThat(Math.abs(truth[step])).as("Ah of step %d", step).isGreaterThan(10);
            assertThat(Math.abs(value - truth[step])).as("error of step %d, Ah", step).isLessThanOrEqualTo(expanded);
            assertThat(expanded).as("uncertainty of step %d, Ah", step).isLessThan(0.01 * Math.abs(value));
        }
        assertThat(farthest).hasSize(9).allSatisfy((_, share) -> assertThat(share).isLessThanOrEqualTo(AT_THE_LIMITS));
        assertThat(Replayed.through(file, RIG, SpiBench.SHORT).scans()).isGreaterThan(15_000);
    }

    /** Runs to the end; charge of each step, Ah. */
    private double[] night(Rehearsal rehearsal) {
        World world = rehearsal.rig().world();
        double[] truth = new double[SpiBench.SHORT.steps().size() + 1];
        double began = 0;
        for (long scan = 1; !rehearsal.over(); scan++) {
            for (Event event : rehearsal.scan()) {
                assertThat(event).isNotInstanceOf(Event.Tripped.class);
                if (event instanceof Event.StepEnded ended) {
                    truth[ended.step()] = (world.coulombs() - began) / 3600;
                    tally.ended(ended.by(), ended.settled(), ended.account());
                } else if (event instanceof Event.StepBegun begun) {
                    began = world.coulombs();
                    tally.begun(begun.step(), begun.kind());
                }
            }
            if (scan % LOOK == 0) {
                compare(latest, world);
            }
        }
        return truth;
    }

    /** Cell, pack, current; the probes, which are a probe's lag and a scan behind a truth that moves slowly. */
    private void compare(Scan scan, World world) {
        look(scan, RIG.channel(Role.CURRENT), world.amps());
        look(scan, RIG.channel(Role.CELL_VOLTS), world.cellVolts(0));
        look(scan, RIG.channel(Role.PACK_VOLTS), world.packVolts());
        for (int i = 0; i < RIG.probes().size(); i++) {
            look(scan, RIG.column(RIG.probes().get(i).name()).orElseThrow(), world.beadCelsius(i));
        }
    }

    private void look(Scan scan, Channel channel, double truth) {
        if (scan.readings().get(channel.index()) instanceof Reading.Valid valid) {
            double expanded = channel.offsetU() + channel.gainU() * Math.abs(truth) + channel.scale();
            farthest.merge(channel.name(), Math.abs(valid.value() - truth) / expanded, Math::max);
        }
    }

    @Test
    void a_copy_taken_at_any_of_five_instants_goes_on_as_the_original_does() {
        Recording original = new Recording();
        Rehearsal rehearsal = SpiBench.rehearsal(SEED, original);
        for (double seconds : new double[] {0.5, 1.7, 2.3, 3.1, 40}) {
            Bench.seconds(rehearsal, seconds);

            goesOnAlike(rehearsal, original);
        }
    }

    @ParameterizedTest
    @EnumSource(WireError.class)
    void a_copy_suffers_on_as_the_original_does(WireError error) {
        Recording original = new Recording();
        Rehearsal rehearsal = SpiBench.rehearsal(SEED, original);
        Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 1));
        rehearsal.inflict(new BoardFault.SpiBusErrs(0, error, error == WireError.DELAY ? 1 : 0.05, 2, 9));
        Bench.seconds(rehearsal, 1);
        rehearsal.inflict(new BoardFault.ChipFails(ChipPlace.of(RIG.wires().expanders().getFirst()), ChipFault.Plain.BROWN_OUT));
        rehearsal.scan();

        goesOnAlike(rehearsal, original);
    }

    private static void goesOnAlike(Rehearsal rehearsal, Recording original) {
        Recording copied = new Recording();
        Rehearsal copy = rehearsal.copy(copied);
        original.kept.clear();

        for (int scan = 0; scan < 150; scan++) {
            rehearsal.scan();
            copy.scan();
        }

        assertThat(original.kept).hasSize(150).isEqualTo(copied.kept);
        assertThat(copy.rig().world().coulombs()).isEqualTo(rehearsal.rig().world().coulombs());
    }

    /** Every scan with its orders, as text. */
    private static final class Recording implements Recorder {
        private final List<String> kept = new ArrayList<>();

        @Override
        public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
            kept.add(scan + " " + StoredOrders.of(orders) + " " + events);
        }
    }
}
