package rigwarden.emulated;

import java.util.Arrays;

/** A chip with a fault that can be set and lifted while it runs. Healthy at first. */
public final class FaultyTarget implements I2cTarget {
    private static final int REGISTERS = 256;
    private static final int WIDEST = 8;

    private final PoweredTarget inner;
    private final byte[][] stuck = new byte[REGISTERS][];
    private ChipFault fault = ChipFault.Plain.HEALTHY;
    private int pointer;

    /** Wraps a chip; the chip itself stays usable, for example to be copied. */
    public FaultyTarget(PoweredTarget inner) {
        this.inner = inner;
    }

    /** Sets the fault; {@link ChipFault.Plain#BROWN_OUT} resets the chip at once, each time it is set. */
    public void set(ChipFault newFault) {
        fault = newFault;
        Arrays.fill(stuck, null);
        if (newFault == ChipFault.Plain.BROWN_OUT) {
            inner.powerOnReset();
        }
    }

    /** The same fault in the same state, on another chip; a random stream goes on from where it stands. */
    public FaultyTarget copy(PoweredTarget newInner) {
        FaultyTarget copy = new FaultyTarget(newInner);
        copy.fault = fault instanceof ChipFault.Garbage garbage
                ? new ChipFault.Garbage(garbage.chance().copy()) : fault;
        copy.pointer = pointer;
        for (int i = 0; i < REGISTERS; i++) {
            copy.stuck[i] = stuck[i] == null ? null : stuck[i].clone();
        }
        return copy;
    }

    @Override
    public int written(byte[] bytes, int offset, int length) {
        if (fault == ChipFault.Plain.HEALTHY) {
            return inner.written(bytes, offset, length);
        }
        if (length > 0) {
            pointer = bytes[offset] & 0xFF;
        }
        return switch (fault) {
            case ChipFault.Plain plain -> switch (plain) {
                case HEALTHY, SHORT_READ, BROWN_OUT -> inner.written(bytes, offset, length);
                case NO_ANSWER -> -1;
                case ALL_ONES -> length;
                case STUCK -> {
                    inner.written(bytes, offset, Math.min(length, 1));
                    yield length;
                }
            };
            case ChipFault.Garbage garbage -> inner.written(bytes, offset, length);
        };
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        if (fault == ChipFault.Plain.HEALTHY) {
            return inner.read(into, offset, length);
        }
        return switch (fault) {
            case ChipFault.Plain plain -> switch (plain) {
                case HEALTHY, BROWN_OUT -> inner.read(into, offset, length);
                case NO_ANSWER -> -1;
                case SHORT_READ -> inner.read(into, offset, Math.max(0, length - 1));
                case ALL_ONES -> {
                    Arrays.fill(into, offset, offset + length, (byte) 0xFF);
                    yield length;
                }
                case STUCK -> repeated(into, offset, length);
            };
            case ChipFault.Garbage garbage -> {
                for (int i = 0; i < length; i++) {
                    into[offset + i] = (byte) garbage.chance().nextInt();
                }
                yield length;
            }
        };
    }

    private int repeated(byte[] into, int offset, int length) {
        if (stuck[pointer] == null) {
            byte[] first = new byte[WIDEST];
            stuck[pointer] = Arrays.copyOf(first, inner.read(first, 0, WIDEST));
        }
        int count = Math.min(length, stuck[pointer].length);
        System.arraycopy(stuck[pointer], 0, into, offset, count);
        return count;
    }
}
