package rigwarden.bus;

import com.pi4j.io.gpio.digital.DigitalOutput;
import java.util.Arrays;
import java.util.Optional;

/**
 * One SPI device. Every call is one whole transaction with the select held throughout; its full length comes back, or
 * a failure with a name. Nothing on this bus acknowledges: that a write arrived is known only by reading it back.
 */
public final class SpiChip {
    private final SpiNode node;
    private final Optional<DigitalOutput> select;
    private final String name;
    private final byte[] sent = new byte[SpiNode.LONGEST];

    SpiChip(SpiNode node, Optional<DigitalOutput> select, String name) {
        this.node = node;
        this.select = select;
        this.name = name;
    }

    /**
     * Sends a command and takes what the chip says after it.
     *
     * @param command first byte
     * @param length count of bytes after it, 1…23
     * @return those bytes, a fresh array
     * @throws BusFailure when the transfer did not take place in full
     */
    public byte[] read(int command, int length) throws BusFailure {
        Arrays.fill(sent, (byte) 0);
        sent[0] = (byte) command;
        return Arrays.copyOfRange(node.exchange(select, sent, length + 1, name), 1, length + 1);
    }

    /**
     * Takes what a chip says that knows no commands.
     *
     * @param length count of bytes, 1…24
     * @return those bytes, a fresh array
     * @throws BusFailure when the transfer did not take place in full
     */
    public byte[] listen(int length) throws BusFailure {
        Arrays.fill(sent, (byte) 0);
        return Arrays.copyOf(node.exchange(select, sent, length, name), length);
    }

    /**
     * Sends a command and bytes after it.
     *
     * @param command first byte
     * @param bytes 0…FFh each, at most 23
     * @throws BusFailure when the transfer did not take place in full
     */
    public void write(int command, int... bytes) throws BusFailure {
        sent[0] = (byte) command;
        for (int i = 0; i < bytes.length; i++) {
            sent[i + 1] = (byte) bytes[i];
        }
        node.exchange(select, sent, bytes.length + 1, name);
    }

    /** Where the chip is, for messages. */
    @Override
    public String toString() {
        return name;
    }
}
