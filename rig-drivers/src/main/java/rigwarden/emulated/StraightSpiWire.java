package rigwarden.emulated;

import java.util.Arrays;
import java.util.List;

/**
 * A wire with which nothing is wrong. Every chip whose select is active hears what passes. Where two drive the line back to
 * the host, the one that pulls low wins; where nobody does, the line stands at its pull.
 */
final class StraightSpiWire implements SpiWire {
    private static final int NONE = -1;

    private final List<SpiSeat> seats;
    private boolean pulledUp;
    private int kept = NONE;

    StraightSpiWire(List<SpiSeat> seats) {
        this.seats = seats;
    }

    void pull(boolean up) {
        pulledUp = up;
    }

    /** Stands as another wire of the same chips does. */
    void standLike(StraightSpiWire other) {
        pulledUp = other.pulledUp;
        kept = other.kept;
        for (int i = 0; i < seats.size(); i++) {
            seats.get(i).standLike(other.seats.get(i));
        }
    }

    /** Kernel documentation, spi.h, cs_change: a message to another device takes a kept select away. */
    @Override
    public int carried(SpiMessage message, byte[] got) {
        if (kept != message.select()) {
            turn(kept, false);
            turn(message.select(), true);
        }
        kept = message.kept() ? message.select() : NONE;
        pass(message, got);
        if (!message.kept()) {
            turn(message.select(), false);
        }
        return message.length();
    }

    private void turn(int select, boolean active) {
        if (select == NONE) {
            return;
        }
        for (SpiSeat seat : seats) {
            if (seat.select == select) {
                seat.turn(active);
            }
        }
    }

    private void pass(SpiMessage message, byte[] got) {
        int length = message.length();
        byte[] driven = new byte[length];
        Arrays.fill(got, 0, length, (byte) 0xFF);
        int mostDriven = 0;
        for (SpiSeat seat : seats) {
            if (seat.active()) {
                Arrays.fill(driven, (byte) 0xFF);
                mostDriven = Math.max(mostDriven, exchanged(seat.chip, message, driven));
                for (int i = 0; i < length; i++) {
                    got[i] &= driven[i];
                }
            }
        }
        if (!pulledUp) {
            Arrays.fill(got, mostDriven, length, (byte) 0);
        }
    }

    private static int exchanged(SpiTarget chip, SpiMessage message, byte[] driven) {
        if (chip.understands(message.mode())) {
            return chip.exchanged(message.bytes(), driven, message.length());
        }
        int count = chip.exchanged(oneBitLate(message.bytes()), driven, message.length());
        byte[] late = oneBitLate(driven);
        System.arraycopy(late, 0, driven, 0, late.length);
        return count;
    }

    private static byte[] oneBitLate(byte[] bytes) {
        byte[] late = new byte[bytes.length];
        int carry = 0;
        for (int i = 0; i < bytes.length; i++) {
            late[i] = (byte) (carry << 7 | (bytes[i] & 0xFF) >> 1);
            carry = bytes[i] & 1;
        }
        return late;
    }

    @Override
    public SpiWire onto(SpiWire base, VirtualClock clock) {
        return base;
    }
}
