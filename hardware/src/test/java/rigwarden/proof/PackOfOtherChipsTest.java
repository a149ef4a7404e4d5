package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.ChipFault;
import rigwarden.emulated.ChipPlace;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.World;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * The reference pack with an INA226, its lower island on an ADS1220 and two probes on MAX31855, of which nothing proves that
 * they still convert: such a rig is refused unattended, and this one is not.
 */
class PackOfOtherChipsTest {
    private static Rig rig;
    private static Rehearsal discharging;
    private static Scan latest;

    @BeforeAll
    static void bring_the_pack_two_minutes_into_a_discharge() throws IOException, BusFailure {
        rig = pack();
        Program program = new Program("discharge", false, List.of(new Step.Discharge(1, 10.5, 2.50)));
        Rehearsal rehearsal = new Rehearsal(rig, program, 7, List.of(), Bench.NOWHERE);
        Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 1));
        Bench.seconds(rehearsal, 120);
        discharging = rehearsal.copy((scan, _, _, _) -> latest = scan);
        discharging.scan();
    }

    private static Rig pack() throws IOException {
        String text = Files.readString(Bench.RIGS.resolve("eight-cells.toml"))
                .replace("[shunt]\n", "[shunt]\nchip = \"ina226\"\n")
                .replace("full_scale_a = 163.84", "full_scale_a = 163")
                .replaceFirst("\\[\\[bus]] +# island of cells 1 to 4.*\nnumber = 10\nhertz = 400000",
                        "[[spi_bus]]\nnumber = 0\nhertz = 1000000\n\n[[spi_bus]]\nnumber = 1\nhertz = 1000000")
                .replace("bus = 10\naddress = 0x48\n", """
                        chip = "ads1220"
                        spi_bus = 0
                        select = 0
                        ready_line = 27
                        reference = "external"
                        reference_v = 4.096
                        reference_percent = 0.04
                        """)
                .replace("bus = 5\naddress = 0x62\n", "chip = \"max31855\"\nspi_bus = 1\nselect = 1\ncouple = \"T\"\ninsulated_v = 500\n")
                .replace("bus = 5\naddress = 0x63\n", "chip = \"max31855\"\nspi_bus = 1\nselect = 2\ncouple = \"K\"\n");
        return switch (RigFile.read("pack.toml", text)) {
            case Read.Sound<Rig> sound -> sound.value();
            case Read.Refused<Rig> refused -> throw new AssertionError(refused.refusals());
        };
    }

    private static double value(String column) {
        return ((Reading.Valid) latest.readings().get(rig.column(column).orElseThrow().index())).value();
    }

    /** The specimen's nine inputs are drawn from what 95 % of them keep: half as much again for all of them. */
    @Test
    void every_tap_and_every_probe_reads_what_is_true_within_its_uncertainty() {
        World world = discharging.rig().world();
        for (VoltageInput input : rig.inputs()) {
            Channel channel = rig.column(input.name()).orElseThrow();
            double truth = input.role() == Role.BUS_VOLTS ? world.busVolts()
                    : world.tapVolts(input.cell()) - world.tapVolts(input.cell() > 4 ? 4 : 0);
            double expanded = channel.offsetU() + channel.gainU() * Math.abs(truth) + channel.scale();
            assertThat(Math.abs(value(input.name()) - truth)).as(input.name()).isLessThanOrEqualTo(1.5 * expanded);
        }
        for (int i = 0; i < rig.probes().size(); i++) {
            assertThat(Math.abs(value(rig.probes().get(i).name()) - world.beadCelsius(i))).as(rig.probes().get(i).name())
                    .isLessThanOrEqualTo(rig.probes().get(i).uncertaintyKelvin() + 0.3);
        }
        assertThat(Math.abs(value(rig.channel(Role.PACK_VOLTS).name()) - world.packVolts())).isLessThan(0.05);
        assertThat(Math.abs(value(rig.channel(Role.CURRENT).name()) - world.amps())).isLessThan(0.1);
    }

    @Test
    void a_silent_MAX31855_trips_and_one_that_hangs_is_not_noticed_while_nothing_warms() {
        ChipPlace contactor = ChipPlace.of(rig.probes().stream().filter(p -> p.place() == Role.CONTACTOR_BODY).findFirst()
                .orElseThrow().chip());

        assertThat(trip(contactor, ChipFault.Plain.NO_ANSWER)).hasValue(31);
        assertThat(trip(contactor, ChipFault.Plain.ALL_ONES)).hasValue(31);
        assertThat(trip(contactor, ChipFault.Plain.BROWN_OUT)).isEmpty();
        assertThat(trip(contactor, ChipFault.Plain.STUCK)).as("why it is refused unattended").isEmpty();
    }

    /** Number of the rule that trips within twenty seconds. */
    private static Optional<Integer> trip(ChipPlace chip, ChipFault how) {
        Rehearsal rehearsal = discharging.copy(Bench.NOWHERE);
        rehearsal.inflict(new BoardFault.ChipFails(chip, how));
        for (int scan = 0; scan < 200; scan++) {
            for (Event event : rehearsal.scan()) {
                if (event instanceof Event.Tripped tripped) {
                    return Optional.of(tripped.first().rule().number());
                }
            }
        }
        return Optional.empty();
    }
}
