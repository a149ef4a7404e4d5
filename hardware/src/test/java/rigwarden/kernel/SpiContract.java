package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiBus;
import com.pi4j.io.spi.SpiMode;
import com.pi4j.plugin.linuxfs.provider.spi.LinuxFsSpiProvider;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.bus.SpiNode;
import rigwarden.chip.max31856.MainsFilter;
import rigwarden.chip.max31856.Max31856;
import rigwarden.chip.max31856.Max31856Codec;
import rigwarden.chip.max31856.Max31856Config;
import rigwarden.chip.max31856.Max31856State;
import rigwarden.emulated.Couple;
import rigwarden.emulated.Max31856Emulator;
import rigwarden.pack.Chance;
import rigwarden.warden.Failure;

/**
 * How the official provider works and fails on {@code /dev/spidev}: what {@code rigwarden.bus} must cope with, and what an
 * emulated provider must do alike.
 */
final class SpiContract {
    private static final int HERTZ = 1_000_000;

    /** What is done with the chip on the first select. */
    @FunctionalInterface
    private interface Use {
        void on(Context context, Spi spi) throws Exception;
    }

    private final SpiWires wires;

    SpiContract(SpiWires wires) {
        this.wires = wires;
    }

    /** Serves bus 0's first select, and bus 1's, and waits for their nodes. */
    static SpiContract served() throws IOException, InterruptedException {
        SpiWires wires = new SpiWires();
        for (String name : List.of("spidev0.0", "spidev1.0")) {
            CuseDevice.serve(name, () -> new SpiDevNode(wires));
            while (!Files.exists(Path.of("/dev", name))) {
                Thread.sleep(10);
            }
        }
        return new SpiContract(wires);
    }

    List<Case> cases() {
        return List.of(
                new Case("SPI: a transfer brings the chip's bytes, at the clock that was asked for", this::transfer),
                new Case("SPI: a failed transfer is -1 and leaves the buffer as it was", this::failed),
                new Case("SPI: a single byte is read with its sign", this::signed),
                new Case("SPI: a write sends more than its length says", this::written),
                new Case("SPI: the same select on another bus is refused", this::twoBuses),
                new Case("SPI: a context that is shut down leaves the node open", this::leftOpen),
                new Case("SPI: the product's transaction is whole or a failure with a name", this::transaction),
                new Case("SPI: the product refuses the same select on another bus by name", this::refused),
                new Case("SPI: mode bits are added and never taken away", this::mode),
                new Case("SPI: the MAX31856 driver reads 40 C", this::probe));
    }

    private void with(SpiMode mode, Use use) throws Exception {
        Context context = context();
        try {
            Spi spi = opened(context, SpiBus.BUS_0, mode);
            use.on(context, spi);
            spi.close();
        } finally {
            context.shutdown();
        }
    }

    private static Context context() {
        return Pi4J.newContextBuilder().noAutoDetect().noAutoInject().disableShutdownHook()
                .add(LinuxFsSpiProvider.newInstance()).build();
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
            assertThat(wires.lastHeard()).containsExactly(0x80, 1, 2, 0xFF);
            assertThat(wires.hertz()).isEqualTo(HERTZ);
        });
    }

    private void failed() throws Exception {
        with(SpiMode.MODE_0, (_, spi) -> {
            byte[] got = {1, 2, 3, 4};
            wires.fails(true);
            try {
                assertThat(spi.transfer(new byte[4], 0, got, 0, 4)).isEqualTo(-1);
            } finally {
                wires.fails(false);
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

            assertThat(wires.lastHeard()).containsExactly(1, 2, 3, 4);
        });
    }

    private void twoBuses() throws Exception {
        with(SpiMode.MODE_0, (context, _) ->
                assertThatThrownBy(() -> opened(context, SpiBus.BUS_1, SpiMode.MODE_0)).isInstanceOf(RuntimeException.class));
    }

    private void leftOpen() throws Exception {
        Context context = context();
        Spi spi = opened(context, SpiBus.BUS_0, SpiMode.MODE_0);
        long open = openings();

        context.shutdown();

        assertThat(openings()).isEqualTo(open).isPositive();
        spi.close();
        assertThat(openings()).isEqualTo(open - 1);
    }

    private static long openings() throws IOException {
        long count = 0;
        try (DirectoryStream<Path> descriptors = Files.newDirectoryStream(Path.of("/proc/self/fd"))) {
            for (Path descriptor : descriptors) {
                count += Files.readSymbolicLink(descriptor).equals(Path.of("/dev/spidev0.0")) ? 1 : 0;
            }
        }
        return count;
    }

    private void mode() throws Exception {
        with(SpiMode.MODE_1, (_, _) -> assertThat(wires.mode()).isEqualTo(1));

        with(SpiMode.MODE_0, (_, _) -> assertThat(wires.mode()).as("asked for 0").isEqualTo(1));
    }

    private static void product(int mode, ProductUse use) throws Exception {
        Context context = context();
        SpiNode node = SpiNode.at(context, 0, 0, mode, HERTZ);
        try {
            use.on(context, node);
        } finally {
            node.close();
            context.shutdown();
        }
    }

    private void transaction() throws Exception {
        product(0, (_, node) -> {
            assertThat(node.chip().read(0x21, 3)).containsExactly(0xFF, 0xFF, 0xFF);
            assertThat(wires.lastHeard()).containsExactly(0x21, 0, 0, 0);

            wires.fails(true);
            try {
                assertThat(catchThrowableOfType(BusFailure.class, () -> node.chip().read(0x21, 3)).why()).isEqualTo(Failure.NO_ANSWER);
            } finally {
                wires.fails(false);
            }

            node.chip().write(0x80, 0x5A);
            assertThat(wires.lastHeard()).containsExactly(0x80, 0x5A);
        });
    }

    private void refused() throws Exception {
        product(0, (context, _) -> assertThat(catchThrowableOfType(BusFailure.class, () -> SpiNode.at(context, 1, 0, 0, HERTZ)))
                .hasMessageContaining("SPI bus 1, select 0"));
    }

    /** Comes last: from now on a chip answers that understands mode 1 only, in which the case before left the node. */
    private void probe() throws Exception {
        wires.chip(new Max31856Emulator(new Warm(), Max31856Emulator.Errors.NONE, Chance.of(1, "kernel", "probe")));
        product(1, (_, node) -> {
            Max31856 driver = new Max31856(node.chip(), Max31856Config.cellProbe(MainsFilter.HZ_50, 0), Max31856State.FRESH);
            driver.configure();
            assertThat(catchThrowableOfType(BusFailure.class, driver::read).why()).as("not before it was converted").isEqualTo(Failure.NOT_READY);

            Thread.sleep(300);

            assertThat(driver.read() * Max31856Codec.CELSIUS_PER_CODE).isCloseTo(40, within(0.05));
        });
    }

    /** What is done with the product's node. */
    @FunctionalInterface
    private interface ProductUse {
        void on(Context context, SpiNode node) throws Exception;
    }

    /** A couple of type T at 40 °C, its chip at 25 °C. */
    private record Warm() implements Max31856Emulator.Wiring {
        @Override
        public long nanos() {
            return System.nanoTime();
        }

        @Override
        public double emfMillivolts() {
            return Couple.T.millivolts(40, 25);
        }

        @Override
        public double coldCelsius() {
            return 25;
        }

        @Override
        public boolean open() {
            return false;
        }

        @Override
        public boolean outsideSupply() {
            return false;
        }
    }
}
