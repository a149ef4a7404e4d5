package rigwarden.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.bench.BenchRig;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class OutputsTest {
    private static final Rig RIG = BenchRig.RIG;

    private final Wire wire = new Wire();

    @Test
    void everyLineIsClaimedLow() throws BusFailure {
        Outputs.claim(Scripted.context(wire), RIG);

        assertThat(wire.log).containsExactlyInAnyOrder(
                "line 1 low", "line 2 low", "line 3 low", "line 4 low", "line 5 low", "line 6 low");
    }

    @Test
    void aLineThatCannotBeClaimedIsNamedAndTheOthersAreLow() {
        wire.brokenLines.add(1);

        BusFailure failure = catchThrowableOfType(BusFailure.class,
                () -> Outputs.claim(Scripted.context(wire), RIG));

        assertThat(failure).hasMessageContaining("contactor on line 1");
        assertThat(wire.levels).hasSize(5).doesNotContainValue(true);
    }

    @Test
    void aLineIsWrittenOnChangeOnlyButAgainAfterAFailedWrite() throws BusFailure {
        Outputs outputs = Outputs.claim(Scripted.context(wire), RIG);
        outputs.set(Output.CONTACTOR, true);
        wire.log.clear();

        assertThat(outputs.set(Output.CONTACTOR, true)).isTrue();
        assertThat(wire.log).isEmpty();
        wire.brokenLines.add(1);
        assertThat(outputs.set(Output.CONTACTOR, false)).isFalse();
        wire.brokenLines.clear();
        assertThat(outputs.set(Output.CONTACTOR, false)).isTrue();
        assertThat(wire.levels).containsEntry(1, false);
    }

    @Test
    void aFailedLowIsWrittenAgainEvenIfTheLineWasLowBefore() throws BusFailure {
        Outputs outputs = Outputs.claim(Scripted.context(wire), RIG);
        wire.brokenLines.add(1);
        outputs.set(Output.CONTACTOR, true);
        wire.brokenLines.clear();
        wire.log.clear();

        assertThat(outputs.set(Output.CONTACTOR, false)).isTrue();
        assertThat(wire.log).containsExactly("line 1 low");
    }

    @Test
    void theHeartbeatTogglesBothWays() throws BusFailure {
        Outputs outputs = Outputs.claim(Scripted.context(wire), RIG);
        wire.log.clear();
        outputs.toggleHeartbeat();
        outputs.toggleHeartbeat();

        assertThat(wire.log).containsExactly("line 5 high", "line 5 low");
    }

    @Test
    void whileBeatsAreWithheldTheLineRestsOnEitherLevelInTurn() throws BusFailure {
        Outputs outputs = Outputs.claim(Scripted.context(wire), RIG);
        outputs.toggleHeartbeat();
        wire.log.clear();

        assertThat(outputs.restHeartbeat()).isTrue();
        assertThat(outputs.restHeartbeat()).isTrue();
        assertThat(wire.log).containsExactly("line 5 low");
        outputs.toggleHeartbeat();
        outputs.toggleHeartbeat();
        wire.log.clear();

        assertThat(outputs.restHeartbeat()).isTrue();
        assertThat(outputs.restHeartbeat()).isTrue();
        assertThat(wire.log).containsExactly("line 5 high");
    }

    @Test
    void aCopyClaimsItsLinesAtTheLevelsThatTheyHad() throws BusFailure {
        Outputs outputs = Outputs.resume(Scripted.context(wire), RIG,
                new OutputsState(Output.CONTACTOR.bit() | Output.HEARTBEAT.bit(), 0, false, false, true, List.of()));

        assertThat(wire.levels).containsEntry(1, true).containsEntry(5, true).containsEntry(2, false);
        assertThat(outputs.state().high()).isEqualTo(Output.CONTACTOR.bit() | Output.HEARTBEAT.bit());
    }

    @Test
    void aSenseThatTheLibraryDoesNotKnowIsAFailure() throws BusFailure {
        Inputs inputs = Inputs.claim(Scripted.context(wire), RIG.panel());
        wire.levels.put(7, true);
        wire.levels.put(8, false);

        assertThat(inputs.read(Role.LOOP)).isEqualTo(1);
        assertThat(inputs.read(Role.COIL_FEED)).isZero();
        assertThat(catchThrowableOfType(BusFailure.class, () -> inputs.read(Role.ARM)).why())
                .isEqualTo(Failure.NO_ANSWER);
    }
}
