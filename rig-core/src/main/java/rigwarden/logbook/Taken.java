package rigwarden.logbook;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;

/**
 * The column {@code taken}: for each fresh reading, in order of channels, the time it was taken less the time of its
 * scan, nanoseconds, little-endian, 4 bytes each, or 8 each if one needs them. NULL when each is what it was when its
 * channel was fresh last (0 before the first time).
 */
final class Taken {
    private final long[] offsets;
    private final byte[][] byLength;
    private int count;
    private boolean changed;
    private boolean wide;
    private boolean boundNull;

    Taken(int channels) {
        offsets = new long[channels];
        byLength = new byte[2 * channels + 1][];
    }

    void clear() {
        count = 0;
        changed = false;
        wide = false;
    }

    void add(long offset, boolean differs) {
        offsets[count++] = offset;
        changed |= differs;
        wide |= offset != (int) offset;
    }

    void bind(PreparedStatement statement, int place) throws SQLException {
        if (changed) {
            statement.setBytes(place, bytes());
            boundNull = false;
        } else if (!boundNull) {
            statement.setNull(place, Types.BLOB);
            boundNull = true;
        }
    }

    /** One array for each length, used again and again: the driver is done with it when the insert returns. */
    private byte[] bytes() {
        int words = wide ? 2 * count : count;
        if (byLength[words] == null) {
            byLength[words] = new byte[4 * words];
        }
        ByteBuffer buffer = ByteBuffer.wrap(byLength[words]).order(ByteOrder.LITTLE_ENDIAN);
        for (int at = 0; at < count; at++) {
            if (wide) {
                buffer.putLong(offsets[at]);
            } else {
                buffer.putInt((int) offsets[at]);
            }
        }
        return byLength[words];
    }

    /** Reads the blob of a scan back into the offsets of its fresh channels. */
    static void read(byte[] blob, long fresh, long[] offset) {
        ByteBuffer buffer = ByteBuffer.wrap(blob).order(ByteOrder.LITTLE_ENDIAN);
        boolean wide = blob.length == 8 * Long.bitCount(fresh);
        if (!wide && blob.length != 4 * Long.bitCount(fresh)) {
            throw new LogbookException("A scan has " + blob.length + " bytes of times for "
                    + Long.bitCount(fresh) + " fresh readings.");
        }
        for (long left = fresh; left != 0; left &= left - 1) {
            offset[Long.numberOfTrailingZeros(left)] = wide ? buffer.getLong() : buffer.getInt();
        }
    }
}
