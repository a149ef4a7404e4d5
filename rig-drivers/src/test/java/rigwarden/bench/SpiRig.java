package rigwarden.bench;

import java.nio.file.Path;
import java.util.List;
import rigwarden.loop.Clock;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.scripted.ScriptedExpander;
import rigwarden.scripted.ScriptedMax31856;
import rigwarden.scripted.Wire;

/** The reference rig on SPI with all its chips on a wire: 25 °C at each probe, 3.2 V at each tap, the loop closed. */
public final class SpiRig implements Clock {
    public static final Rig RIG = read();
    /** GPB0 of the expander: the loop. */
    static final int LOOP = 1;
    private static final int READY = 27;

    public final Wire wire = new Wire();
    public final ScriptedExpander expander = new ScriptedExpander(wire, 0x20);
    final List<ScriptedMax31856> probes;
    private final byte[] registers = new byte[4];
    private boolean converted;
    private long nanos;

    public SpiRig() {
        wire.put(0x40, 0xFE, 0x54, 0x49);
        wire.put(0x40, 0xFF, 0x22, 0x60);
        wire.put(0x40, 0x01, 0xF0, 0x60);
        wire.put(0x40, 0x02, 0x0A, 0x00);
        wire.beforeRead = _ -> {
            if (wire.log.getLast().equals("read 40 6")) {
                wire.put(0x40, 0x06, 0x00, converted ? 0x08 : 0);
                converted = false;
            }
        };
        wire.onLines.put(17, this::converter);
        wire.levels.put(READY, true);
        probes = List.of(4, 22, 23, 24, 18).stream().map(line -> {
            ScriptedMax31856 probe = new ScriptedMax31856();
            wire.onLines.put(line, probe);
            return probe;
        }).toList();
        room = new ScriptedMax31856();
        wire.onSelects.put(0, room);
        expander.inputs(LOOP);
    }

    final ScriptedMax31856 room;

    private static Rig read() {
        return switch (RigFile.read(Path.of("..", "hardware", "rigs", "one-cell-spi.toml"))) {
            case Read.Sound<Rig> sound -> sound.value();
            case Read.Refused<Rig> refused -> throw new AssertionError(refused.refusals());
        };
    }

    private byte[] converter(byte[] sent) {
        byte[] answer = new byte[sent.length];
        switch (sent[0] & 0xF0) {
            case 0x40 -> System.arraycopy(sent, 1, registers, 0, sent.length - 1);
            case 0x20 -> System.arraycopy(registers, 0, answer, 1, 4);
            case 0x10 -> answer[1] = 0x64;
            default -> wire.levels.put(READY, true);
        }
        return answer;
    }

    /** Every probe has its next temperature, and outputs are where their latches are. */
    void settle() {
        converted = true;
        probes.forEach(probe -> probe.done(0x01, 0x90, 0, 0));
        room.done(0x01, 0x90, 0, 0);
        expander.settle();
        nanos += RIG.scanNanos();
    }

    @Override
    public long nanos() {
        return nanos;
    }

    /** Whoever waits finds a conversion done. */
    @Override
    public void sleepUntil(long then) {
        nanos = Math.max(nanos, then);
        wire.levels.put(READY, false);
    }
}
