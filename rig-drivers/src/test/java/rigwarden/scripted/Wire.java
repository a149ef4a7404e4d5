package rigwarden.scripted;

import com.pi4j.io.exception.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.function.UnaryOperator;

/** What tests put on the wire and what they saw on it: registers by bus, address and pointer. */
public final class Wire {
    /** Everything that went over the wire, in order, as text. */
    public final List<String> log = new ArrayList<>();
    /** Lines whose writes throw. */
    public final Set<Integer> brokenLines = new HashSet<>();
    /** Levels of output and input lines. */
    public final Map<Integer, Boolean> levels = new HashMap<>();
    /** Runs before each read with the register's pointer. */
    public IntConsumer beforeRead = register -> { };
    /** SPI chips on select lines: what each answers to the bytes of one transaction. */
    public final Map<Integer, UnaryOperator<byte[]>> onLines = new HashMap<>();
    /** SPI chips on a node's own select. */
    public final Map<Integer, UnaryOperator<byte[]>> onSelects = new HashMap<>();
    /** What transfers return instead of their length, in turn; the buffer is left as it was. */
    public final List<Integer> badTransfers = new ArrayList<>();
    private final Map<Integer, byte[]> registers = new HashMap<>();
    private final Map<Integer, byte[]> memories = new HashMap<>();
    private final Set<Integer> silent = new HashSet<>();
    private final Set<Integer> brief = new HashSet<>();
    private final Set<Integer> kept = new HashSet<>();
    private final Set<Integer> idle = new HashSet<>();

    private static int key(int address, int register) {
        return address << 8 | register;
    }

    /** Makes the registers of a chip bytes that follow each other, all 0. */
    public byte[] memory(int address, int size) {
        return memories.computeIfAbsent(address, _ -> new byte[size]);
    }

    /** Puts bytes into a register. */
    public void put(int address, int register, int... bytes) {
        byte[] raw = new byte[bytes.length];
        for (int i = 0; i < bytes.length; i++) {
            raw[i] = (byte) bytes[i];
        }
        if (memories.containsKey(address)) {
            System.arraycopy(raw, 0, memories.get(address), register, raw.length);
        } else {
            registers.put(key(address, register), raw);
        }
    }

    /** Makes writes to a register go nowhere. */
    public void keep(int address, int register) {
        kept.add(key(address, register));
    }

    /** Makes the highest bit of a register read 1 after each write, as that of a converter that is done. */
    public void idle(int address, int register) {
        idle.add(key(address, register));
    }

    /** Makes a chip stop answering. */
    public void silence(int address) {
        silent.add(address);
    }

    /** Makes a register answer one byte short. */
    public void shorten(int address, int register) {
        brief.add(key(address, register));
    }

    /** What a register holds; of bytes that follow each other two of them. */
    public int bytesOf(int address, int register) {
        int value = 0;
        byte[] memory = memories.get(address);
        byte[] raw = memory == null ? registers.get(key(address, register)) : Arrays.copyOfRange(memory, register, register + 2);
        for (byte b : raw) {
            value = value << 8 | (b & 0xFF);
        }
        return value;
    }

    /** Count of log lines that begin with a text. */
    public long count(String beginning) {
        return log.stream().filter(line -> line.startsWith(beginning)).count();
    }

    int read(int address, int register, byte[] into, int offset, int length) {
        log.add("read " + Integer.toHexString(address) + " " + Integer.toHexString(register));
        beforeRead.accept(register);
        byte[] memory = memories.get(address);
        byte[] raw = memory == null ? registers.get(key(address, register)) : Arrays.copyOfRange(memory, register, register + length);
        if (silent.contains(address) || raw == null) {
            throw new IOException("no acknowledge");
        }
        int given = brief.contains(key(address, register)) ? length - 1 : Math.min(length, raw.length);
        System.arraycopy(raw, 0, into, offset, given);
        return given;
    }

    int write(int address, int register, byte[] bytes, int offset, int length) {
        log.add("write " + Integer.toHexString(address) + " " + Integer.toHexString(register));
        if (silent.contains(address)) {
            throw new IOException("no acknowledge");
        }
        if (!kept.contains(key(address, register))) {
            byte[] raw = new byte[length];
            System.arraycopy(bytes, offset, raw, 0, length);
            if (idle.contains(key(address, register))) {
                raw[0] |= (byte) 0x80;
            }
            if (memories.containsKey(address)) {
                System.arraycopy(raw, 0, memories.get(address), register, length);
            } else {
                registers.put(key(address, register), raw);
            }
        }
        return length;
    }

    int transfer(int select, byte[] sent, byte[] into, int length) {
        byte[] out = Arrays.copyOf(sent, length);
        log.add("spi " + select + " " + HexFormat.of().formatHex(out));
        if (!badTransfers.isEmpty()) {
            return badTransfers.removeFirst();
        }
        List<UnaryOperator<byte[]>> listening = new ArrayList<>();
        onLines.forEach((line, chip) -> {
            if (Boolean.FALSE.equals(levels.get(line))) {
                listening.add(chip);
            }
        });
        if (onSelects.containsKey(select)) {
            listening.add(onSelects.get(select));
        }
        if (listening.size() != 1) {
            throw new AssertionError(listening.size() + " chips are selected");
        }
        System.arraycopy(listening.getFirst().apply(out), 0, into, 0, length);
        return length;
    }

    void level(int line, boolean high) {
        log.add("line " + line + (high ? " high" : " low"));
        if (brokenLines.contains(line)) {
            throw new IOException("line lost");
        }
        levels.put(line, high);
    }
}
