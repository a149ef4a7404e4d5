package rigwarden.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.pi4j.context.Context;
import org.junit.jupiter.api.Test;
import rigwarden.bench.SpiRig;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.scripted.Scripted;
import rigwarden.warden.Failure;

/** Contactor, pre-charge, sounder and relays on an expander's port A; the heartbeat on the header. */
class ExpanderOutputsTest {
    private static final Rig RIG = SpiRig.RIG;
    private static final int AT = 0x20;
    private static final int OLAT = 0x14;

    private final SpiRig rig = new SpiRig();
    private final Context context = Scripted.context(rig.wire);

    private int latch() {
        return rig.wire.bytesOf(AT, OLAT);
    }

    @Test
    void pinsOfAnExpanderAreLinesLikeAnyOther() throws BusFailure {
        Outputs outputs = Outputs.claim(context, RIG);

        assertThat(outputs.set(Output.CONTACTOR, true)).isTrue();
        assertThat(outputs.set(Output.relay(1), true)).isTrue();
        assertThat(outputs.toggleHeartbeat()).isTrue();

        assertThat(latch()).as("GPA0 and GPA4").isEqualTo(0x1100);
        assertThat(rig.wire.levels.get(26)).isTrue();
        outputs.set(Output.CONTACTOR, false);
        assertThat(latch()).isEqualTo(0x1000);
    }

    @Test
    void theHeadersLinesAreLowBeforeTheExpanderIsSpokenTo() throws BusFailure {
        Outputs.claim(context, RIG);

        assertThat(rig.wire.log.indexOf("line 26 low")).isNotNegative();
        assertThat(rig.wire.log.subList(0, rig.wire.log.indexOf("line 26 low"))).noneMatch(word -> word.startsWith("read") || word.startsWith("write"));
    }

    @Test
    void anExpanderThatIsSilentIsNamedAndTheHeadersLinesAreClaimedLow() {
        rig.wire.silence(AT);

        assertThat(catchThrowableOfType(BusFailure.class, () -> Outputs.claim(context, RIG)))
                .hasMessageContaining("expander box");
        assertThat(rig.wire.levels.get(26)).isFalse();
    }

    @Test
    void aWriteThatTheExpanderDoesNotKeepDidNotGoOut() throws BusFailure {
        Outputs outputs = Outputs.claim(context, RIG);
        rig.wire.keep(AT, OLAT);

        assertThat(outputs.set(Output.CONTACTOR, true)).isFalse();
        assertThat(outputs.isHigh(Output.CONTACTOR)).isFalse();
    }

    @Test
    void aContactorThatFellWithItsExpanderDoesNotCloseAgainBeforeEverythingWasOrderedOff() throws BusFailure {
        Outputs outputs = Outputs.claim(context, RIG);
        outputs.set(Output.CONTACTOR, true);
        rig.expander.brownOut();

        outputs.refresh();

        assertThat(outputs.set(Output.CONTACTOR, true)).isFalse();
        assertThat(latch()).isZero();
        assertThat(outputs.set(Output.SOUNDER, true)).as("the sounder may").isTrue();
        outputs.refresh();
        assertThat(outputs.set(Output.CONTACTOR, true)).as("nor in the next scan").isFalse();
        outputs.all().forEach(output -> outputs.set(output, false));
        assertThat(outputs.set(Output.CONTACTOR, true)).isTrue();
        assertThat(latch()).isEqualTo(0x0100);
    }

    @Test
    void oneReadingThatIsFalseLetsNothingFall() throws BusFailure {
        Outputs outputs = Outputs.claim(context, RIG);
        outputs.set(Output.CONTACTOR, true);
        rig.expander.settle();
        boolean[] done = {false};
        rig.wire.beforeRead = register -> {
            rig.wire.put(AT, 0x02, 0, done[0] ? 0 : 0x10);
            done[0] |= register == 0x00;
        };
        outputs.refresh();

        assertThat(outputs.set(Output.CONTACTOR, true)).isTrue();
        assertThat(latch()).isEqualTo(0x0100);
    }

    @Test
    void sensesAreOfTheScansOwnReading() throws BusFailure {
        Outputs outputs = Outputs.claim(context, RIG);
        Inputs inputs = Inputs.claim(context, RIG.panel(), outputs.expanders());
        assertThat(catchThrowableOfType(BusFailure.class, () -> inputs.read(Role.LOOP)).why()).isEqualTo(Failure.NOT_READ);
        rig.expander.settle();

        outputs.refresh();

        assertThat(inputs.read(Role.LOOP)).isEqualTo(1);
        assertThat(inputs.read(Role.FEEDBACK)).isZero();
        rig.wire.silence(AT);
        outputs.refresh();
        assertThat(catchThrowableOfType(BusFailure.class, () -> inputs.read(Role.LOOP)).why()).isEqualTo(Failure.NO_ANSWER);
    }
}
