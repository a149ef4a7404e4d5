package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Converter;
import rigwarden.rig.Expander;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Device;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.ShuntChip;
import rigwarden.rig.SpiPlace;
import rigwarden.rig.VoltageInput;

class ReferenceFilesTest {
    private static final long HOUR = 3_600_000_000_000L;

    @Test
    void the_one_cell_bench_is_read_with_every_part() {
        Rig rig = Reference.rig().value();

        assertThat(rig.channels().stream().map(Channel::name).collect(Collectors.joining(" "))).isEqualTo(
                "current_a charge_as clock_ratio pack_v cell_01_v bus_v cell_01_c terminal_01p_c terminal_01n_c shunt_c"
                        + " contactor_c room_c loop_on coil_feed_on contactor_on arm_on source_v source_a source_on"
                        + " sink_v sink_a sink_on recorder_lag_s free_bytes lateness_s");
        assertThat(rig.path()).extracting("name").containsExactly("fuse", "cable", "lug", "shunt", "contactor",
                "source_relay", "sink_relay");
        assertThat(rig.probes()).extracting("positive").containsExactly(false, true, false, false, false, false);
        assertThat(rig.channel(Role.BODY).periodNanos()).isEqualTo(200_000_000L);
        assertThat(rig.shunt().toleranceRelative()).isCloseTo(0.0025, within(1e-12));
        assertThat(rig.busHertz()).containsEntry(1, 400_000).containsEntry(3, 100_000).hasSize(2);
        assertThat(rig.rehearsed().roomCelsius()).isEqualTo(22);
    }

    @Test
    void the_lines_controller_is_the_boards_own_unless_it_is_named() {
        Rig named = Reference.sound(Reference.rig("heartbeat = 26", "controller = 4\nheartbeat = 26")).value();

        assertThat(Reference.rig().value().panel().controller()).isEmpty();
        assertThat(named.panel().controller()).hasValue(4);
    }

    @Test
    void the_register_maps_are_read_in_volts_amperes_and_seconds() {
        Rig rig = Reference.sound(Reference.registers()).value();
        RegisterMap source = (RegisterMap) ((Device.Programmed) rig.devices().get(0)).instrument().speech();
        RegisterMap sink = (RegisterMap) ((Device.Programmed) rig.devices().get(1)).instrument().speech();

        assertThat(source.amps()).isEqualTo(new Register(4, 1, Register.Type.S16, false, 0.01));
        assertThat(source.power()).isEqualTo(new Register(5, 0, Register.Type.BIT, false, 1));
        assertThat(source.link()).hasValueSatisfying(link -> assertThat(link.time().most()).isCloseTo(6553.5, within(1e-9)));
        assertThat(sink.volts()).isEqualTo(new Register(3, 0x1000, Register.Type.F32, true, 1));
        assertThat(sink.limit().most()).isCloseTo(4_294_967.295, within(1e-6));
        assertThat(sink.setVolts()).isEmpty();
        assertThat(sink.link()).isEmpty();
    }

    @Test
    void its_uncalibrated_tap_is_named_and_nothing_else() {
        assertThat(Reference.rig().warnings()).extracting(Refusal::kind).containsExactly(RefusalKind.TAP_NAMED);
    }

    @Test
    void the_night_is_read_in_amperes_of_this_rig() {
        Program night = Reference.sound(ProgramFile.read(Reference.NIGHT, Reference.rig())).value();

        assertThat(night.unattended()).isTrue();
        assertThat(night.steps()).containsExactly(
                new Step.Charge(0, 21, 3.60, 5.25),
                new Step.Rest(2 * HOUR, 3 * HOUR),
                new Step.Discharge(1, 10.5, 2.50),
                new Step.Rest(2 * HOUR, 3 * HOUR),
                new Step.Charge(0, 21, 3.60, 5.25),
                new Step.Rest(2 * HOUR, 3 * HOUR),
                new Step.Discharge(1, 52.5, 2.50),
                new Step.Rest(2 * HOUR, 3 * HOUR),
                new Step.Park(0, 21, 0.40, 3.60));
    }

    @Test
    void the_bench_on_spi_is_read_with_its_chips_and_the_nodes_that_it_needs() {
        Rig rig = Reference.sound(Reference.spi()).value();

        assertThat(rig.shunt().chip()).isEqualTo(ShuntChip.INA226);
        assertThat(rig.channel(Role.CURRENT).scale()).isCloseTo(2.5e-6 / 0.0005, within(1e-15));
        assertThat(rig.channel(Role.CELL_VOLTS).scale()).isCloseTo(4.096 / 8388608, within(1e-18));
        assertThat(rig.channel(Role.ROOM).scale()).isEqualTo(0.0078125);
        assertThat(rig.inputs()).extracting(VoltageInput::converter).containsOnly(new Converter.Ads1220(
                new SpiPlace(0, 1, OptionalInt.of(17)), 27, true, 4.096, 0.0004));
        assertThat(rig.probes().getLast().chip())
                .isEqualTo(new ProbeChip.Max31856(new SpiPlace(0, 0, OptionalInt.empty()), 50));
        assertThat(rig.wires().expanders()).containsExactly(new Expander("box", 1, 0x20, 100));
        assertThat(rig.nodes()).containsExactly("i2c-1", "spidev0.0", "spidev0.1");
    }
}
