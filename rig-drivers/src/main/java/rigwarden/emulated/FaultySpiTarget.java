package rigwarden.emulated;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * A chip on an SPI bus with a fault that can be set and lifted while it runs. Healthy at first. A stuck chip repeats, for each
 * first byte of a frame, what it answered to it first; the last byte of each message is not driven by one that reads short.
 */
public final class FaultySpiTarget implements SpiTarget {
    private static final int NO_BYTE = -1;
    private static final int PLACES = 256;

    private final SpiChip inner;
    private final Map<Integer, Integer> stuck = new HashMap<>();
    private ChipFault fault = ChipFault.Plain.HEALTHY;
    private boolean active;
    private int first = NO_BYTE;
    private int place;

    /** Wraps a chip; the chip itself stays usable, for example to be copied. */
    public FaultySpiTarget(SpiChip inner) {
        this.inner = inner;
        active = inner.active();
    }

    /** Sets the fault; {@link ChipFault.Plain#BROWN_OUT} resets the chip at once, each time it is set. */
    public void set(ChipFault newFault) {
        fault = newFault;
        stuck.clear();
        if (newFault == ChipFault.Plain.BROWN_OUT) {
            inner.powerOnReset();
        }
    }

    /** The same fault in the same state, on another chip; a random stream goes on from where it stands. */
    public FaultySpiTarget copy(SpiChip newInner) {
        FaultySpiTarget copy = new FaultySpiTarget(newInner);
        copy.fault = fault instanceof ChipFault.Garbage garbage
                ? new ChipFault.Garbage(garbage.chance().copy()) : fault;
        copy.stuck.putAll(stuck);
        copy.active = active;
        copy.first = first;
        copy.place = place;
        return copy;
    }

    @Override
    public boolean understands(int mode) {
        return inner.understands(mode);
    }

    @Override
    public void selected(boolean nowActive) {
        active = nowActive;
        first = NO_BYTE;
        place = 0;
        inner.selected(nowActive);
    }

    @Override
    public int exchanged(byte[] sent, byte[] driven, int length) {
        if (!active || length == 0) {
            return inner.exchanged(sent, driven, length);
        }
        first = first == NO_BYTE ? sent[0] & 0xFF : first;
        return switch (fault) {
            case ChipFault.Plain plain -> switch (plain) {
                case HEALTHY, BROWN_OUT -> inner.exchanged(sent, driven, length);
                case NO_ANSWER -> nothing(driven, length);
                case SHORT_READ -> {
                    inner.exchanged(sent, driven, length);
                    driven[length - 1] = (byte) 0xFF;
                    yield length - 1;
                }
                case ALL_ONES -> {
                    nothing(driven, length);
                    yield length;
                }
                case STUCK -> repeated(sent, driven, length);
            };
            case ChipFault.Garbage garbage -> {
                inner.exchanged(sent, driven, length);
                for (int i = 0; i < length; i++) {
                    driven[i] = (byte) garbage.chance().nextInt();
                }
                yield length;
            }
        };
    }

    private static int nothing(byte[] driven, int length) {
        Arrays.fill(driven, 0, length, (byte) 0xFF);
        return 0;
    }

    private int repeated(byte[] sent, byte[] driven, int length) {
        if (inner.changes(first)) {
            nothing(driven, length);
            return length;
        }
        inner.exchanged(sent, driven, length);
        for (int i = 0; i < length; i++) {
            int live = driven[i];
            driven[i] = stuck.computeIfAbsent(first * PLACES + place % PLACES, _ -> live).byteValue();
            place++;
        }
        return length;
    }
}
