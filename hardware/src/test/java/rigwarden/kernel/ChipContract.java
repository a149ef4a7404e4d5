package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.pi4j.context.Context;
import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.bus.Trouble;
import rigwarden.warden.Failure;

/** What drivers rely on of an I2C bus. */
final class ChipContract {
    private static final int FIRST = 0x48;
    private static final int SECOND = 0x49;
    private static final int NOBODY = 0x50;

    /** What is done with two chips, the first opened. */
    @FunctionalInterface
    private interface Use {
        void on(Context context, Chip first, Memory memory) throws Exception;
    }

    private final Header header;

    private ChipContract(Header header) {
        this.header = header;
    }

    static List<Case> cases(Header header) {
        ChipContract contract = new ChipContract(header);
        return List.of(
                new Case("bytes are unsigned and most significant first", contract::unsigned),
                new Case("what is written reads back", contract::readBack),
                new Case("a register read is one combined transfer", contract::combined),
                new Case("the bytes that a chip leaves out are ones", contract::shortAnswer),
                new Case("nobody at an address is not acknowledged", contract::nobody),
                new Case("a chip that falls silent fails and comes back", contract::silent),
                new Case("an address that the kernel holds is named as held", contract::held),
                new Case("a write after a failed select reaches no other chip", contract::heldWrite),
                new Case("two chips on one bus do not mix", contract::two),
                new Case("an address cannot be opened twice", contract::twice));
    }

    private void with(Use use) throws Exception {
        Memory memory = new Memory();
        header.put(FIRST, memory);
        Context context = header.open();
        try {
            use.on(context, Chip.at(context, Header.BUS, FIRST), memory);
        } finally {
            context.shutdown();
        }
    }

    private void unsigned() throws Exception {
        with((_, chip, memory) -> {
            memory.set(0x0A, 0xFF, 0xFE, 0x80, 0x00, 0x01);

            assertThat(chip.read(0x0A, 5)).isEqualTo(0xFF_FE80_0001L);
            assertThat(chip.readByte(0x0A)).isEqualTo(0xFF);
            assertThat(chip.readWord(0x0B)).isEqualTo(0xFE80);
        });
    }

    private void readBack() throws Exception {
        with((_, chip, memory) -> {
            chip.writeWord(0x01, 0xB6DA);
            chip.writeByte(0x05, 0x80);

            assertThat(chip.readWord(0x01)).isEqualTo(0xB6DA);
            assertThat(chip.readByte(0x05)).isEqualTo(0x80);
            assertThat(memory.get(0x01)).isEqualTo(0xB6);
        });
    }

    private void combined() throws Exception {
        with((_, chip, _) -> {
            long before = header.combined();
            for (int i = 0; i < 20; i++) {
                chip.readWord(0x01);
            }

            assertThat(header.combined() - before).isEqualTo(20);
        });
    }

    private void shortAnswer() throws Exception {
        with((_, chip, memory) -> {
            memory.set(0x0A, 0x12, 0x34, 0x56);
            memory.answersAtMost(2);

            assertThat(chip.read(0x0A, 3)).isEqualTo(0x12_34FF);
        });
    }

    private void nobody() throws Exception {
        with((context, _, _) -> {
            Chip nobody = Chip.at(context, Header.BUS, NOBODY);

            BusFailure failure = catchThrowableOfType(BusFailure.class, () -> nobody.readWord(0x01));

            assertThat(failure).hasMessageContaining("bus 7, address 50h");
            assertThat(failure.why()).isEqualTo(Failure.NO_ANSWER);
            assertThat(failure.trouble()).isEqualTo(Trouble.NOT_ACKNOWLEDGED);
            assertThatThrownBy(() -> nobody.writeWord(0x01, 1)).isInstanceOf(BusFailure.class);
        });
    }

    private void silent() throws Exception {
        with((_, chip, memory) -> {
            memory.set(0x01, 0x12, 0x34);
            memory.silent(true);

            assertThat(catchThrowableOfType(BusFailure.class, () -> chip.readWord(0x01)).trouble()).isEqualTo(Trouble.NOT_ACKNOWLEDGED);
            assertThat(catchThrowableOfType(BusFailure.class, () -> chip.writeByte(0x01, 1)).why()).isEqualTo(Failure.NO_ANSWER);

            memory.silent(false);
            assertThat(chip.readWord(0x01)).isEqualTo(0x1234);
        });
    }

    private void held() throws Exception {
        header.held(SECOND, true);
        try {
            with((context, _, _) -> {
                Chip held = Chip.at(context, Header.BUS, SECOND);

                BusFailure failure = catchThrowableOfType(BusFailure.class, () -> held.readWord(0x01));

                assertThat(failure.trouble()).isEqualTo(Trouble.HELD_BY_KERNEL);
                assertThat(failure).hasMessageContaining("address 49h").hasMessageContaining("unbind");
            });
        } finally {
            header.held(SECOND, false);
        }
    }

    private void heldWrite() throws Exception {
        header.put(SECOND, new Memory());
        header.held(SECOND, true);
        try {
            with((context, first, memory) -> {
                Chip held = Chip.at(context, Header.BUS, SECOND);
                first.writeWord(0x01, 0x1111);
                assertThatThrownBy(() -> held.readWord(0x01)).isInstanceOf(BusFailure.class);

                assertThatThrownBy(() -> held.writeWord(0x01, 0x2222)).isInstanceOf(BusFailure.class);

                assertThat(memory.get(0x01) << 8 | memory.get(0x02)).as("the chip that was selected before").isEqualTo(0x1111);
            });
        } finally {
            header.held(SECOND, false);
        }
    }

    private void two() throws Exception {
        Memory other = new Memory();
        header.put(SECOND, other);
        with((context, first, memory) -> {
            Chip second = Chip.at(context, Header.BUS, SECOND);
            for (int i = 0; i < 50; i++) {
                first.writeWord(0x01, i);
                second.writeWord(0x01, 0xFF00 + i);
                assertThat(first.readWord(0x01)).isEqualTo(i);
                assertThat(second.readWord(0x01)).isEqualTo(0xFF00 + i);
            }
        });
    }

    private void twice() throws Exception {
        with((context, _, _) -> assertThatThrownBy(() -> Chip.at(context, Header.BUS, FIRST)).isInstanceOf(BusFailure.class)
                .hasMessageContaining("address 48h"));
    }
}
