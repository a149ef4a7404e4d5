package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;

/** Frames by hand, from the examples' form in MODBUS Application Protocol V1.1b3, section 6, and Serial Line V1.02, 2.5.1. */
class ModbusInstrumentTest {
    private static final RegisterMap MAP = new RegisterMap(0x11, RegisterMap.Parity.EVEN,
            new Register(4, 0, Register.Type.U16, false, 0.001), new Register(4, 1, Register.Type.S16, false, 0.01),
            new Register(2, 0, Register.Type.BIT, false, 1), Optional.of(new Register(6, 256, Register.Type.U16, false, 0.001)),
            new Register(16, 258, Register.Type.F32, true, 1), new Register(5, 0, Register.Type.BIT, false, 1),
            new Register(6, 272, Register.Type.U16, false, 0.001), new Register(3, 272, Register.Type.U16, false, 0.001),
            Optional.of(new RegisterMap.LinkTime(new Register(6, 288, Register.Type.U16, false, 0.1),
                    new Register(3, 288, Register.Type.U16, false, 0.1), 2)));

    private final Post post = new Post();
    private final VirtualClock clock = new VirtualClock(0);
    private final ModbusInstrument source =
            new ModbusInstrument(MAP, post, ScpiInstrument.Errors.NONE, new ScpiInstrument.Ratings(4, 60), clock);

    private String say(String content) {
        return sayRaw(ModbusFrame.closed(HexFormat.of().parseHex(content)));
    }

    private String sayRaw(byte[] frame) {
        source.receive(frame, frame.length);
        source.still();
        byte[] room = new byte[300];
        byte[] answer = Arrays.copyOf(room, source.take(room));
        assertThat(answer.length == 0 || ModbusFrame.whole(answer)).isTrue();
        return answer.length == 0 ? "" : HexFormat.of().formatHex(answer, 0, answer.length - 2);
    }

    @Test
    void theCheckIsThatOfTheStandardsWorkedExample() {
        // published (MODBUS over Serial Line V1.02, 6.2.2, figure of the frame 02 07): check 0x1241, sent 41 12
        assertThat(ModbusFrame.closed((byte) 0x02, (byte) 0x07)).containsExactly(0x02, 0x07, 0x41, 0x12);
    }

    @Test
    void settingsAndMeasurementsStandInTheirRegisters() {
        assertThat(say("110601000daa")).isEqualTo("110601000daa");
        assertThat(say("1110010200020400004124")).isEqualTo("111001020002");
        assertThat(say("11050000ff00")).isEqualTo("11050000ff00");

        assertThat(post.on).isTrue();
        assertThat(post.orderedVolts).isEqualTo(3.498);
        assertThat(post.orderedAmps).isEqualTo(10.25);
        assertThat(say("110200000001")).isEqualTo("11020101");
        assertThat(say("110301020002")).isEqualTo("1103040000" + "4124");
    }

    @Test
    void whatCannotBeDoneIsAnsweredByItsException() {
        assertThat(say("112b0e0100")).isEqualTo("11ab01");
        assertThat(say("110600500001")).isEqualTo("118602");
        assertThat(say("110400050001")).isEqualTo("118402");
        assertThat(say("1104000000ff")).isEqualTo("118403");
        assertThat(say("110500001234")).isEqualTo("118503");
        assertThat(say("110601001388")).isEqualTo("118603");
        assertThat(say("11100102000102" + "4124")).isEqualTo("119002");
        assertThat(post.on).isFalse();
        assertThat(post.orderedVolts).isZero();
    }

    @Test
    void aWrongCheckAnotherStationAndHalfAFrameAreNotAnswered() {
        assertThat(sayRaw(HexFormat.of().parseHex("110601000daa0000"))).isEmpty();
        assertThat(say("120601000daa")).isEmpty();
        byte[] frame = ModbusFrame.closed(HexFormat.of().parseHex("11050000ff00"));
        assertThat(sayRaw(Arrays.copyOf(frame, 4))).isEmpty();
        assertThat(sayRaw(Arrays.copyOfRange(frame, 4, 8))).isEmpty();

        assertThat(post.on).isFalse();
    }

    @Test
    void aBroadcastIsObeyedAndNotAnswered() {
        assertThat(say("00050000ff00")).isEmpty();

        assertThat(post.on).isTrue();
    }

    @Test
    void withATimeSetItSwitchesOffWhenNobodySpeaksToIt() {
        say("110601200014");
        say("11050000ff00");
        clock.sleepUntil(1_900_000_000L);
        source.protect();
        boolean kept = post.on;
        clock.sleepUntil(2_100_000_000L);
        source.protect();

        assertThat(kept).isTrue();
        assertThat(post.on).isFalse();
    }
}
