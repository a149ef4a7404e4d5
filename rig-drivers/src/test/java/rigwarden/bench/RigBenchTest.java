package rigwarden.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyLong;
import static org.mockito.ArgumentMatchers.eq;
import static org.mockito.Mockito.clearInvocations;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.when;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Role;
import rigwarden.scripted.HandClock;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.ScriptedShunt;
import rigwarden.scripted.Wire;
import rigwarden.serial.Heard;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.Order;
import rigwarden.warden.Closing;
import rigwarden.warden.Failure;
import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;
import rigwarden.warden.Setpoint;
import rigwarden.warden.Way;

class RigBenchTest {
    private static final Setpoint SET = new Setpoint(20, 3.6);

    private final Wire wire = new Wire();
    private final HandClock clock = new HandClock();
    private final InstrumentAgent source = mock(InstrumentAgent.class);
    private final InstrumentAgent sink = mock(InstrumentAgent.class);
    private final Agents agents = new Agents(List.of(Optional.of(source), Optional.of(sink)), true);
    private final OwnReadings own = new OwnReadings(() -> 0.25, () -> 1_000_000_000L, () -> 0.000125);
    private ScriptedShunt shunt;
    private RigBench bench;

    @BeforeEach
    void start() throws BusFailure {
        shunt = BenchRig.wire(wire);
        when(source.heard()).thenReturn(new Heard.Answer(3.5, 20, true, 7));
        when(sink.heard()).thenReturn(new Heard.Silent(Failure.NO_ANSWER, 0));
        when(source.order(any())).thenReturn(true);
        when(sink.order(any())).thenReturn(true);
        when(source.order(any(), anyLong())).thenReturn(true);
        when(sink.order(any(), anyLong())).thenReturn(true);
        bench = RigBench.start(BenchRig.RIG, Scripted.context(wire), clock, agents, own);
        settle();
    }

    /** New results everywhere. */
    private void settle() {
        shunt.ready(true);
        wire.put(0x60, 4, 0x40);
        wire.put(0x61, 4, 0x40);
        clock.pass(BenchRig.SCAN);
    }

    private Scan take() {
        Scan scan = bench.take();
        settle();
        return scan;
    }

    private static Reading of(Scan scan, Role role) {
        return scan.readings().get(BenchRig.RIG.channel(role).index());
    }

    private static double value(Scan scan, Role role) {
        return ((Reading.Valid) of(scan, role)).value();
    }

    private static Failure why(Scan scan, Role role) {
        return ((Reading.Failed) of(scan, role)).why();
    }

    private Orders.Energised energised(Way way, Closing stage) {
        Orders.Energised orders = mock(Orders.Energised.class);
        Lease lease = lease(bench.state().number());
        when(orders.lease()).thenReturn(lease);
        when(orders.through()).thenReturn(way == Way.CHARGE ? 0 : 1);
        when(orders.way()).thenReturn(way);
        when(orders.stage()).thenReturn(stage);
        when(orders.set()).thenReturn(SET);
        return orders;
    }

    private static Lease lease(long scan) {
        Lease lease = mock(Lease.class);
        when(lease.scan()).thenReturn(scan);
        return lease;
    }

    @Test
    void ordersAndBeatsUnderALeaseOfAnotherScanDoNothingButOff() {
        take();
        Orders.Energised old = energised(Way.CHARGE, Closing.CURRENT);
        take();
        wire.log.clear();

        assertThat(bench.apply(old)).isFalse();
        bench.beat(lease(bench.state().number() - 1));

        assertThat(high()).as("nothing but the sounder").isEqualTo("6");
        verify(source, never()).order(any(Order.On.class), anyLong());
    }

    @Test
    void outputsAreClaimedLowBeforeAnyChipIsTouched() {
        int lastClaim = wire.log.lastIndexOf("line 5 low");
        int firstChip = wire.log.indexOf("read 40 3e");

        assertThat(lastClaim).isNotNegative().isLessThan(firstChip);
    }

    @Test
    void aMissingChipStopsTheStartWithTheOutputsLow() {
        Wire other = new Wire();
        BenchRig.wire(other);
        other.silence(0x48);

        Throwable refusal = catchThrowable(
                () -> RigBench.start(BenchRig.RIG, Scripted.context(other), clock, agents, own));

        assertThat(refusal).isInstanceOf(BusFailure.class).hasMessageContaining("address 48h");
        assertThat(other.levels.get(1)).isFalse();
    }

    @Test
    void aScanCarriesEveryChannelInItsOwnUnit() {
        shunt.current(32_000);
        shunt.charge(1600);
        take();
        Scan scan = take();

        assertThat(scan.number()).isEqualTo(2);
        assertThat(scan.readings()).hasSize(BenchRig.RIG.channels().size());
        assertThat(why(scan, Role.ACCUMULATED)).isEqualTo(Failure.NOT_READY);
        assertThat(value(scan, Role.CURRENT)).isCloseTo(20, within(1e-9));
        assertThat(value(scan, Role.CELL_VOLTS)).isCloseTo(3.2, within(1e-9));
        assertThat(value(scan, Role.BUS_VOLTS)).isCloseTo(3.2, within(1e-9));
        assertThat(value(scan, Role.BODY)).isCloseTo(25, within(1e-9));
        assertThat(value(scan, Role.ROOM)).isCloseTo(25, within(1e-9));
        assertThat(value(scan, Role.LOOP)).isEqualTo(1);
        assertThat(value(scan, Role.FEEDBACK)).isZero();
        assertThat(value(scan, Role.SOURCE_AMPS)).isCloseTo(20, within(1e-9));
        assertThat(((Reading.Valid) of(scan, Role.SOURCE_ON)).takenNanos()).isEqualTo(7);
        assertThat(why(scan, Role.SINK_VOLTS)).isEqualTo(Failure.NO_ANSWER);
        assertThat(value(scan, Role.RECORDER_LAG)).isCloseTo(0.25, within(1e-9));
        assertThat(value(scan, Role.FREE_SPACE)).isEqualTo(1e9);
        assertThat(value(scan, Role.LATENESS)).isCloseTo(0.000125, within(1e-12));
    }

    @Test
    void theTransactionsOfAScanAreCountable() {
        take();
        wire.log.clear();
        take();

        assertThat(wire.count("read 40")).isEqualTo(5);
        assertThat(wire.count("write 48") + wire.count("read 48")).isEqualTo(6);
        assertThat(wire.count("read 6")).isEqualTo(4);
        assertThat(wire.count("write 6")).isEqualTo(1);
        assertThat(wire.log).hasSize(16);
    }

    @Test
    void probesOfTwoScansTakeTurnsAndKeepTheirReadingInBetween() {
        take();
        Scan second = take();
        Scan third = take();

        boolean bodyKept = of(second, Role.BODY) == of(third, Role.BODY);
        boolean roomKept = of(second, Role.ROOM) == of(third, Role.ROOM);
        assertThat(bodyKept).isNotEqualTo(roomKept);
    }

    @Test
    void aSilentChipFailsItsChannelsSinceTheFirstSuchScan() {
        take();
        wire.silence(0x40);
        Scan first = take();
        Scan later = take();

        for (Role role : new Role[] {Role.CURRENT, Role.ACCUMULATED, Role.PACK_VOLTS}) {
            assertThat(of(later, role)).isEqualTo(new Reading.Failed(Failure.NO_ANSWER, first.nanos()));
        }
        assertThat(value(later, Role.CELL_VOLTS)).isCloseTo(3.2, within(1e-9));
    }

    @Test
    void notReadyShortAndLostConfigurationReachTheirOwnChannelOnly() {
        take();
        shunt.ready(false);
        wire.shorten(0x48, 0);
        wire.put(0x60, 6, 0);
        wire.put(0x61, 6, 0);
        Scan scan = bench.take();
        settle();
        Scan next = bench.take();

        assertThat(why(scan, Role.CURRENT)).isEqualTo(Failure.NOT_READY);
        assertThat(why(scan, Role.CELL_VOLTS)).isEqualTo(Failure.NO_ANSWER);
        assertThat(why(next, Role.BODY)).isEqualTo(Failure.CONFIGURATION_LOST);
        assertThat(value(next, Role.LOOP)).isEqualTo(1);
    }

    @Test
    void anExceptionFromTheProgramsOwnReadingsIsAReadingToo() throws BusFailure {
        OwnReadings broken = new OwnReadings(() -> {
            throw new IllegalStateException("recorder gone");
        }, () -> 0, () -> 0);
        RigBench other = RigBench.start(BenchRig.RIG, Scripted.context(wire), clock, agents, broken);

        assertThat(why(other.take(), Role.RECORDER_LAG)).isEqualTo(Failure.NONSENSE);
    }

    @Test
    void eachStageSetsItsLines() {
        assertThat(bench.apply(energised(Way.CHARGE, Closing.PRECHARGE))).isTrue();
        assertThat(high()).isEqualTo("2");
        bench.apply(energised(Way.CHARGE, Closing.CONTACT));
        assertThat(high()).isEqualTo("12");
        bench.apply(energised(Way.CHARGE, Closing.CONTACT));
        assertThat(high()).isEqualTo("1");
        bench.apply(energised(Way.CHARGE, Closing.SILENCE));
        assertThat(high()).isEqualTo("1");
        verify(source, never()).order(eq(new Order.On(SET)), anyLong());
        bench.apply(energised(Way.CHARGE, Closing.CURRENT));
        assertThat(high()).isEqualTo("13");
        verify(source).order(eq(new Order.On(SET)), anyLong());
        bench.apply(energised(Way.DISCHARGE, Closing.CURRENT));
        assertThat(high()).isEqualTo("14");
        verify(sink).order(eq(new Order.On(SET)), anyLong());
        bench.apply(Orders.OFF_NOW);
        assertThat(high()).isEqualTo("6");
        bench.apply(Orders.OFF);
        assertThat(high()).isEmpty();
    }

    private String high() {
        StringBuilder high = new StringBuilder();
        for (int line = 1; line <= 6; line++) {
            if (wire.levels.get(line)) {
                high.append(line);
            }
        }
        return high.toString();
    }

    @Test
    void eachOffPartIsTriedAlthoughOthersFail() {
        for (int broken = 1; broken <= 3; broken++) {
            bench.apply(energised(Way.CHARGE, broken == 2 ? Closing.PRECHARGE : Closing.CURRENT));
            wire.brokenLines.add(broken);
            clearInvocations(source, sink);

            assertThat(bench.apply(Orders.OFF_NOW)).isFalse();

            for (int line = 1; line <= 4; line++) {
                assertThat(wire.levels.get(line)).as("line " + line).isEqualTo(line == broken);
            }
            assertThat(wire.levels.get(6)).isTrue();
            verify(source).order(Order.OFF);
            verify(sink).order(Order.OFF);
            wire.brokenLines.clear();
            assertThat(bench.apply(Orders.OFF)).isTrue();
        }
    }

    @Test
    void nothingIsRaisedWhenSomethingWouldNotGoLow() {
        bench.apply(energised(Way.DISCHARGE, Closing.CURRENT));
        wire.brokenLines.add(4);

        assertThat(bench.apply(energised(Way.CHARGE, Closing.CURRENT))).isFalse();
        assertThat(wire.levels.get(3)).isFalse();
        verify(source, never()).order(eq(new Order.On(SET)), anyLong());
    }

    @Test
    void onlyABeatTogglesTheHeartbeat() {
        wire.log.clear();
        take();
        bench.apply(energised(Way.CHARGE, Closing.CURRENT));
        bench.apply(Orders.OFF_NOW);
        bench.apply(Orders.OFF);
        assertThat(wire.count("line 5")).isZero();

        bench.beat(lease(bench.state().number()));
        bench.beat(lease(bench.state().number()));

        assertThat(wire.log.stream().filter(line -> line.startsWith("line 5")))
                .containsExactly("line 5 high", "line 5 low");
    }

    @Test
    void aCopyGoesOnWithOtherDevices() throws BusFailure {
        bench.apply(energised(Way.CHARGE, Closing.CURRENT));
        take();
        Scan before = take();
        Wire other = new Wire();
        new ScriptedShunt(other, 0x40);
        BenchRig.wire(other);
        other.put(0x40, 1, 0xBB, 0x6A);
        other.put(0x48, 1, 0xC3, 0xA3);
        RigBench copy = RigBench.resume(BenchRig.RIG, Scripted.context(other), clock, agents, own, bench.state());

        assertThat(other.count("write")).isZero();
        assertThat(copy.state()).isEqualTo(bench.state());
        assertThat(copy.take().number()).isEqualTo(before.number() + 1);
        assertThat(other.levels).containsEntry(1, true).containsEntry(3, true).containsEntry(2, false);
    }
}
