package rigwarden.emulated;

import com.pi4j.io.exception.IOException;
import com.pi4j.io.spi.SpiBase;
import com.pi4j.io.spi.SpiConfig;
import com.pi4j.io.spi.SpiProvider;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;

/**
 * One SPI device of a driver, call for call what the linuxfs plugin 3.0.3 makes of it (read off its class files). A message
 * that the kernel refuses is −1 with the buffer as it was; a single byte is read with its sign; a mode is only added to the
 * bits that the node has already; {@code write} sends the rest of the array whatever length is asked for, answers that length,
 * or 0 after a failure, and leaves the chip select active until the next message; {@code isOpen} never says yes.
 */
final class EmulatedSpi extends SpiBase {
    private static final int CHUNK = 4096;

    private final EmulatedBoard board;
    private final int select;
    private Optional<EmulatedSpiBus> node = Optional.empty();

    EmulatedSpi(EmulatedBoard board, SpiProvider provider, SpiConfig config) {
        super(provider, config);
        this.board = board;
        this.select = config.address();
    }

    /**
     * Opens the node and adds the mode's bits to it.
     *
     * @throws RuntimeException when there is no such node, or the controller cannot send the lowest bit first
     * @throws IOException when the configuration has flags
     */
    @Override
    public void open() {
        super.open();
        int number = config().bus().getBus();
        EmulatedSpiBus bus = board.spiBus(number).filter(found -> found.hasNode(select))
                .orElseThrow(() -> new RuntimeException("Failed to open SPI device /dev/spidev" + number + "." + select));
        if (config().flags() != null) {
            throw new IOException("Unsupported SPI Pi5 parameter flags");
        }
        bus.mode(select, bus.mode(select) | config().mode().getMode());
        if (config().writeLsbFirst() != 0) {
            throw new RuntimeException("Could not write the SPI SHIFT write.");
        }
        node = Optional.of(bus);
    }

    @Override
    public void close() {
        node = Optional.empty();
        super.close();
    }

    @Override
    public int transfer(byte[] write, int writeOffset, byte[] read, int readOffset, int length) {
        requireSomething(length);
        Objects.checkFromIndexSize(writeOffset, length, write.length);
        Objects.checkFromIndexSize(readOffset, length, read.length);
        byte[] got = new byte[length];
        if (!message(Arrays.copyOfRange(write, writeOffset, writeOffset + length), got, false)) {
            return -1;
        }
        System.arraycopy(got, 0, read, readOffset, length);
        return length;
    }

    @Override
    public int read() {
        byte[] single = new byte[1];
        return read(single, 0, 1) == 1 ? single[0] : -1;
    }

    /** The controller shifts out zeros meanwhile. */
    @Override
    public int read(byte[] into, int offset, int length) {
        requireSomething(length);
        Objects.checkFromIndexSize(offset, length, into.length);
        byte[] got = new byte[length];
        if (!message(new byte[length], got, false)) {
            return -1;
        }
        System.arraycopy(got, 0, into, offset, length);
        return length;
    }

    @Override
    public int write(byte data) {
        return write(new byte[] {data}, 0, 1);
    }

    @Override
    public int write(byte[] data, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, data.length);
        int answer = length;
        for (int from = offset; from < data.length; from += CHUNK) {
            byte[] chunk = Arrays.copyOfRange(data, from, Math.min(data.length, from + CHUNK));
            if (!message(chunk, new byte[chunk.length], true)) {
                answer = 0;
            }
        }
        return answer;
    }

    private boolean message(byte[] sent, byte[] got, boolean kept) {
        board.traffic().spiMessages++;
        return node.isPresent() && node.get().message(select, sent, got, kept);
    }

    private static void requireSomething(int length) {
        if (length <= 0) {
            throw new IllegalArgumentException("Allocation size must be greater than zero");
        }
    }
}
