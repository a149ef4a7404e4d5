package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.pi4j.context.Context;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiBus;
import com.pi4j.io.spi.SpiMode;
import java.util.List;
import java.util.OptionalLong;
import rigwarden.bus.BusFailure;
import rigwarden.bus.SpiNode;
import rigwarden.warden.Failure;

/**
 * How the official provider works and fails on {@code /dev/spidev}, and the emulated one alike: what {@code rigwarden.bus} must cope
 * with.
 */
final class SpiContract {
    private static final int HERTZ = 1_000_000;

    /** What is done with the chip on the first select. */
    @FunctionalInterface
    private interface Use {
        void on(Context context, Spi spi) throws Exception;
    }

    private final SpiHeader header;

    private SpiContract(SpiHeader header) {
        this.header = header;
    }

    static List<Case> cases(SpiHeader header) {
        SpiContract contract = new SpiContract(header);
        return List.of(
                new Case("SPI: a transfer brings the chip's bytes, at the clock that was asked for", contract::transfer),
                new Case("SPI: a failed transfer is -1 and leaves the buffer as it was", contract::failed),
                new Case("SPI: a single byte is read with its sign", contract::signed),
                new Case("SPI: a write sends more than its length says", contract::written),
                new Case("SPI: the same select on another bus is refused", contract::twoBuses),
                new Case("SPI: a context that is shut down leaves the node open", contract::leftOpen),
                new Case("SPI: the product's transaction is whole or a failure with a name", contract::transaction),
                new Case("SPI: the product refuses the same select on another bus by name", contract::refused));
    }

    /** Comes when no chip of mode 0 is wanted any more. */
    static Case mode(SpiHeader header) {
        return new Case("SPI: mode bits are added and never taken away", new SpiContract(header)::mode);
    }

    private void with(SpiMode mode, Use use) throws Exception {
        Context context = header.open();
        try {
            Spi spi = opened(context, SpiBus.BUS_0, mode);
            use.on(context, spi);
            spi.close();
        } finally {
            context.shutdown();
        }
    }

    private static Spi opened(Context context, SpiBus bus, SpiMode mode) {
        return context.create(Spi.newConfigBuilder(context).id("spi-" + bus.getBus()).bus(bus)
                .address(0).mode(mode).baud(HERTZ).build());
    }

    private void transfer() throws Exception {
        with(SpiMode.MODE_0, (_, spi) -> {
            byte[] got = new byte[4];

            assertThat(spi.transfer(new byte[] {(byte) 0x80, 1, 2, (byte) 0xFF}, 0, got, 0, 4)).isEqualTo(4);

            assertThat(got).containsExactly(0x7F, 0xFE, 0xFD, 0x00);
            assertThat(header.socket().lastHeard()).containsExactly(0x80, 1, 2, 0xFF);
            header.hertz().ifPresent(hertz -> assertThat(hertz).isEqualTo(HERTZ));
        });
    }

    private void failed() throws Exception {
        with(SpiMode.MODE_0, (_, spi) -> {
            byte[] got = {1, 2, 3, 4};
            header.fails(true);
            try {
                assertThat(spi.transfer(new byte[4], 0, got, 0, 4)).isEqualTo(-1);
            } finally {
                header.fails(false);
            }

            assertThat(got).containsExactly(1, 2, 3, 4);
        });
    }

    private void signed() throws Exception {
        with(SpiMode.MODE_0, (_, spi) -> assertThat(spi.read()).isEqualTo(-1));
    }

    private void written() throws Exception {
        with(SpiMode.MODE_0, (_, spi) -> {
            spi.write(new byte[] {1, 2, 3, 4}, 0, 2);

            assertThat(header.socket().lastHeard()).containsExactly(1, 2, 3, 4);
        });
    }

    private void twoBuses() throws Exception {
        with(SpiMode.MODE_0, (context, _) ->
                assertThatThrownBy(() -> opened(context, SpiBus.BUS_1, SpiMode.MODE_0)).isInstanceOf(RuntimeException.class));
    }

    private void leftOpen() throws Exception {
        Context context = header.open();
        Spi spi = opened(context, SpiBus.BUS_0, SpiMode.MODE_0);
        OptionalLong open = header.openings();

        context.shutdown();

        assertThat(spi.transfer(new byte[1], 0, new byte[1], 0, 1)).isEqualTo(1);
        assertThat(header.openings()).isEqualTo(open);
        spi.close();
        if (open.isPresent()) {
            assertThat(header.openings()).hasValue(open.getAsLong() - 1);
        }
    }

    private void mode() throws Exception {
        header.socket().empty();
        with(SpiMode.MODE_1, (_, spi) -> {
            spi.read();
            assertThat(header.socket().mode()).isEqualTo(1);
        });

        with(SpiMode.MODE_0, (_, spi) -> {
            spi.read();
            assertThat(header.socket().mode()).as("asked for 0").isEqualTo(1);
        });
    }

    private void product(ProductUse use) throws Exception {
        Context context = header.open();
        SpiNode node = SpiNode.at(context, 0, 0, 0, HERTZ);
        try {
            use.on(context, node);
        } finally {
            node.close();
            context.shutdown();
        }
    }

    private void transaction() throws Exception {
        product((_, node) -> {
            assertThat(node.chip().read(0x21, 3)).containsExactly(0xFF, 0xFF, 0xFF);
            assertThat(header.socket().lastHeard()).containsExactly(0x21, 0, 0, 0);

            header.fails(true);
            try {
                assertThat(catchThrowableOfType(BusFailure.class, () -> node.chip().read(0x21, 3)).why()).isEqualTo(Failure.NO_ANSWER);
            } finally {
                header.fails(false);
            }

            node.chip().write(0x80, 0x5A);
            assertThat(header.socket().lastHeard()).containsExactly(0x80, 0x5A);
        });
    }

    private void refused() throws Exception {
        product((context, _) -> assertThat(catchThrowableOfType(BusFailure.class, () -> SpiNode.at(context, 1, 0, 0, HERTZ)))
                .hasMessageContaining("SPI bus 1, select 0"));
    }

    /** What is done with the product's node. */
    @FunctionalInterface
    private interface ProductUse {
        void on(Context context, SpiNode node) throws Exception;
    }
}
