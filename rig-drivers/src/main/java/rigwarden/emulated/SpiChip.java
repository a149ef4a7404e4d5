package rigwarden.emulated;

import java.util.Arrays;

/** A chip on an SPI bus that handles its bytes one by one. What it says is decided by what it heard before. */
public abstract class SpiChip implements SpiTarget {
    private boolean active;

    SpiChip() {}

    SpiChip(SpiChip other) {
        active = other.active;
    }

    boolean active() {
        return active;
    }

    /** Takes the supply away and gives it back: registers at their reset values, conversions begun anew. */
    public void powerOnReset() {
        reset();
        if (active) {
            begin();
        }
    }

    /** Puts everything to its power-on value. */
    abstract void reset();

    /** The chip select has become active. */
    abstract void begin();

    /** One byte in; answers the byte that was shifted out meanwhile, 0 to 255, FFh where the output floats. */
    abstract int clocked(int in);

    /** The chip select has been taken away. */
    abstract void end();

    /** Whether a frame that begins with this byte changes anything in the chip. */
    abstract boolean changes(int first);

    @Override
    public final void selected(boolean nowActive) {
        if (nowActive == active) {
            return;
        }
        active = nowActive;
        if (active) {
            begin();
        } else {
            end();
        }
    }

    @Override
    public final int exchanged(byte[] sent, byte[] driven, int length) {
        if (!active) {
            Arrays.fill(driven, 0, length, (byte) 0xFF);
            return 0;
        }
        for (int i = 0; i < length; i++) {
            driven[i] = (byte) clocked(sent[i] & 0xFF);
        }
        return length;
    }
}
