package rigwarden.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Role;
import rigwarden.scripted.Scripted;
import rigwarden.serial.Heard;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.Order;
import rigwarden.warden.Failure;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** The bench of a rig with SPI probes and taps, an INA226, and its panel on an MCP23017. */
class SpiBenchTest {
    private final SpiRig rig = new SpiRig();
    private final InstrumentAgent agent = mock(InstrumentAgent.class);
    private final Agents agents = new Agents(List.of(Optional.of(agent), Optional.of(agent)), true);
    private final OwnReadings own = new OwnReadings(() -> 0, () -> 1_000_000_000L, () -> 0);
    private RigBench bench;

    @BeforeEach
    void start() throws BusFailure {
        when(agent.heard()).thenReturn(new Heard.Silent(Failure.NO_ANSWER, 0));
        when(agent.order(any(Order.class))).thenReturn(true);
        bench = RigBench.start(SpiRig.RIG, Scripted.context(rig.wire), rig, agents, own);
        rig.settle();
    }

    private Scan take() {
        Scan scan = bench.take();
        rig.settle();
        return scan;
    }

    private static Reading of(Scan scan, Role role) {
        return scan.readings().get(SpiRig.RIG.channel(role).index());
    }

    private static double value(Scan scan, Role role) {
        return ((Reading.Valid) of(scan, role)).value();
    }

    private static Failure why(Scan scan, Role role) {
        return ((Reading.Failed) of(scan, role)).why();
    }

    @Test
    void twoScansReadEveryChipInItsOwnUnit() {
        take();
        Scan scan = take();

        assertThat(value(scan, Role.CURRENT)).isCloseTo(-4000 * 2.5e-6 / 0.0005, within(1e-9));
        assertThat(value(scan, Role.PACK_VOLTS)).isCloseTo(3.2, within(1e-12));
        assertThat(value(scan, Role.CELL_VOLTS)).isCloseTo(0x640000 / 8388608.0 * 4.096, within(1e-9));
        for (Role place : List.of(Role.BODY, Role.STUD, Role.SHUNT_BODY, Role.CONTACTOR_BODY, Role.ROOM)) {
            assertThat(SpiRig.RIG.channels(place)).allSatisfy(channel ->
                    assertThat(((Reading.Valid) scan.readings().get(channel.index())).value()).isEqualTo(25));
        }
        assertThat(value(scan, Role.LOOP)).isEqualTo(1);
        assertThat(value(scan, Role.ARM)).isZero();
    }

    @Test
    void outputsAreLowOnTheExpanderBeforeAnyOtherChipIsTouched() {
        int written = rig.wire.log.indexOf("write 20 14");
        int other = rig.wire.log.indexOf("read 40 fe");

        assertThat(written).isBetween(0, other);
        assertThat(rig.wire.log.subList(0, written)).noneMatch(line -> line.startsWith("spi"));
    }

    @Test
    void aChipThatLosesItsSupplyCostsItsOwnReadingsOnly() {
        take();
        take();
        rig.probes.getFirst().brownOut();
        Scan one = take();
        Scan two = take();

        assertThat(List.of(of(one, Role.BODY), of(two, Role.BODY)))
                .anyMatch(reading -> reading instanceof Reading.Failed failed && failed.why() == Failure.CONFIGURATION_LOST);
        assertThat(value(two, Role.ROOM)).isEqualTo(25);
        take();
        take();
        assertThat(value(take(), Role.BODY)).isEqualTo(25);
    }

    @Test
    void sensesOfAnExpanderThatLostItsConfigurationFailAndComeBack() {
        take();
        rig.expander.brownOut();

        Scan lost = take();

        assertThat(why(lost, Role.LOOP)).isEqualTo(Failure.CONFIGURATION_LOST);
        assertThat(why(lost, Role.FEEDBACK)).isEqualTo(Failure.CONFIGURATION_LOST);
        assertThat(value(take(), Role.LOOP)).isEqualTo(1);
    }

    @Test
    void offReachesTheExpandersPins() {
        take();
        assertThat(bench.apply(Orders.OFF_NOW)).isTrue();
        rig.settle();

        assertThat(rig.wire.bytesOf(0x20, 0x14)).as("GPA2, the sounder").isEqualTo(0x0400);
    }

    @Test
    void aCopyGoesOnWithWhatItsDriversKnew() throws BusFailure {
        take();
        take();
        BenchState state = bench.state();

        RigBench copy = RigBench.resume(SpiRig.RIG, Scripted.context(rig.wire), rig, agents, own, state);
        Scan scan = copy.take();

        assertThat(value(scan, Role.LOOP)).isEqualTo(1);
        assertThat(state.probes()).hasSize(6).allMatch(probe -> probe.asked());
        assertThat(value(scan, Role.ROOM)).isEqualTo(25);
    }
}
