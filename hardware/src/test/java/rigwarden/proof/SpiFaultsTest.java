package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.ChipFault;
import rigwarden.emulated.ChipPlace;
import rigwarden.emulated.Rehearsal;
import rigwarden.emulated.WireError;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Limits;
import rigwarden.run.Event;
import rigwarden.warden.Reading;
import rigwarden.warden.Trip;

/** Each chip of the bench on SPI, its buses and lines, failing while 94 A flow: the rule that trips, and the true current. */
class SpiFaultsTest {
    private static final Rig RIG = SpiBench.RIG;
    private static final int SCANS = 100;
    private static final int READY = 27;
    private static final int SELECT_OF_CELL = 4;
    private static Rehearsal discharging;

    @BeforeAll
    static void bring_one_discharge_to_the_instant_from_which_the_cases_fork() {
        discharging = SpiBench.discharging(3);
    }

    /**
     * What came of a fault.
     *
     * @param trip the first; empty when there was none in thirteen seconds
     * @param seconds from the fault to it
     * @param failed scans in which a channel failed, by its name
     */
    private record Outcome(Optional<Trip> trip, double seconds, Map<String, Integer> failed, Rehearsal rehearsal) {
        int rule() {
            return trip.orElseThrow().rule().number();
        }
    }

    private static Outcome after(BoardFault fault) {
        Map<String, Integer> failed = new LinkedHashMap<>();
        Rehearsal rehearsal = discharging.copy((scan, _, _, _) -> RIG.channels().forEach(channel -> {
            if (scan.readings().get(channel.index()) instanceof Reading.Failed) {
                failed.merge(channel.name(), 1, Integer::sum);
            }
        }));
        long began = rehearsal.rig().clock().nanos();
        rehearsal.inflict(fault);
        Optional<Trip> trip = Optional.empty();
        double seconds = 0;
        for (int scan = 0; scan < SCANS && trip.isEmpty(); scan++) {
            for (Event event : rehearsal.scan()) {
                if (event instanceof Event.Tripped tripped) {
                    trip = Optional.of(tripped.first());
                    seconds = (rehearsal.rig().clock().nanos() - began) * 1e-9;
                }
            }
        }
        if (trip.isPresent()) {
            Bench.seconds(rehearsal, 2);
            assertThat(Math.abs(rehearsal.rig().world().amps())).as("the true current, two seconds later").isLessThan(0.2);
        }
        System.out.printf("%-90s %-22s %5.2f s %s%n", fault, trip.map(t -> t.rule().toString()).orElse("no trip"), seconds, failed);
        return new Outcome(trip, seconds, failed, rehearsal);
    }

    static Stream<ChipPlace> chips() {
        return Stream.of(Stream.of(ChipPlace.of(RIG.shunt())),
                RIG.inputs().stream().map(input -> ChipPlace.of(input.converter())).distinct(),
                RIG.probes().stream().map(probe -> ChipPlace.of(probe.chip())),
                RIG.wires().expanders().stream().map(ChipPlace::of)).flatMap(chip -> chip);
    }

    @ParameterizedTest
    @MethodSource("chips")
    void a_chip_that_hangs_is_silent_or_reads_as_ones_trips_as_a_channel_that_failed(ChipPlace chip) {
        for (ChipFault fault : List.of(ChipFault.Plain.STUCK, ChipFault.Plain.NO_ANSWER, ChipFault.Plain.ALL_ONES)) {
            Outcome outcome = after(new BoardFault.ChipFails(chip, fault));

            assertThat(outcome.rule()).isEqualTo(31);
            assertThat(outcome.seconds()).isLessThanOrEqualTo(Limits.reactionSeconds(RIG, outcome.trip().orElseThrow().rule()));
        }
    }

    @ParameterizedTest
    @MethodSource("chips")
    void a_supply_that_dips_costs_one_reading_and_on_the_expander_the_contactor(ChipPlace chip) {
        Outcome outcome = after(new BoardFault.ChipFails(chip, ChipFault.Plain.BROWN_OUT));

        if (chip.equals(ChipPlace.of(RIG.wires().expanders().getFirst()))) {
            assertThat(outcome.rule()).as("its coils fell").isEqualTo(16);
            assertThat(outcome.rehearsal().rig().world().feedback()).as("contact").isFalse();
        } else {
            assertThat(outcome.trip()).isEmpty();
            assertThat(outcome.failed().values()).isNotEmpty().allMatch(scans -> scans <= 2);
        }
    }

    @ParameterizedTest
    @EnumSource(WireError.class)
    void every_error_of_half_of_the_messages_on_the_SPI_bus_trips(WireError error) {
        Outcome outcome = after(new BoardFault.SpiBusErrs(0, error, error == WireError.DELAY ? 1 : 0.5, 2, 9));

        assertThat(outcome.trip()).isPresent();
    }

    @Test
    void a_ready_line_or_a_select_line_that_is_stuck_trips_as_channels_that_failed() {
        for (boolean high : new boolean[] {true, false}) {
            assertThat(after(new BoardFault.InputStuck(READY, high)).rule()).isEqualTo(31);
            assertThat(after(new BoardFault.OutputStuck(SELECT_OF_CELL, high)).rule()).isEqualTo(31);
        }
    }

    @Test
    void lines_of_the_expander_that_are_stuck_are_found_by_what_they_should_show() {
        int contactor = RIG.panel().contactor();

        assertThat(after(new BoardFault.OutputStuck(contactor, false)).rule()).as("shorted to ground").isEqualTo(16);
        assertThat(after(new BoardFault.InputStuck(RIG.panel().loop(), false)).rule()).isEqualTo(41);
        assertThat(after(new BoardFault.OutputStuck(contactor, true)).trip()).as("it is high").isEmpty();
    }

    @Test
    void bytes_that_are_mangled_on_every_bus_trip() {
        assertThat(after(new BoardFault.BytesMangled(0.1, 4)).trip()).isPresent();
    }

    @Test
    void a_wrong_voltage_current_or_temperature_is_found_by_another_channel() {
        assertThat(after(new BoardFault.OpenProbe(0)).rule()).isEqualTo(31);
        assertThat(after(new BoardFault.ShuntDrifts(0)).trip()).isPresent();
        assertThat(after(new BoardFault.InputDrifts(0, 1.2)).rule()).as("cell against pack").isIn(1, 4);
        assertThat(after(new BoardFault.ProbeDrifts(1, 60)).rule()).as("hot joint").isEqualTo(23);
    }
}
