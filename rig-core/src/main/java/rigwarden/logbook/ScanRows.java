package rigwarden.logbook;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** The tables {@code scan} and {@code gap} read back into scans, one after the other. */
final class ScanRows implements AutoCloseable {
    private static final int FIRST_CODE = 5;

    private final List<Channel> channels;
    private final Rows scans;
    private final Rows gaps;
    private final Reading[] last;
    private final Reading[] failed;
    private final long[] offset;

    ScanRows(Connection connection, List<Channel> channels) throws SQLException {
        this.channels = channels;
        scans = new Rows(connection, "SELECT * FROM scan ORDER BY number");
        gaps = new Rows(connection, "SELECT scan, channel, why, since_ns FROM gap ORDER BY scan, channel");
        last = new Reading[channels.size()];
        failed = new Reading[channels.size()];
        offset = new long[channels.size()];
    }

    boolean there() {
        return scans.there();
    }

    Scan next() throws SQLException {
        ResultSet row = scans.row();
        long number = row.getLong(1);
        long nanos = row.getLong(2);
        long fresh = row.getLong(3);
        byte[] taken = row.getBytes(4);
        if (taken != null) {
            Taken.read(taken, fresh, offset);
        }
        takeGaps(number);
        List<Reading> readings = new ArrayList<>(last.length);
        for (int channel = 0; channel < last.length; channel++) {
            long code = row.getLong(FIRST_CODE + channel);
            if (code == 0 && row.wasNull()) {
                last[channel] = failed[channel];
            } else if ((fresh & 1L << channel) != 0) {
                last[channel] = Reading.of(channels.get(channel), code, nanos + offset[channel]);
            }
            if (last[channel] == null) {
                throw new LogbookException("Scan " + number + " has nothing for " + channels.get(channel).name()
                        + ", and no row says why.");
            }
            readings.add(last[channel]);
        }
        scans.next();
        return new Scan(number, nanos, List.copyOf(readings));
    }

    private void takeGaps(long scan) throws SQLException {
        while (gaps.upTo(scan)) {
            ResultSet row = gaps.row();
            int channel = row.getInt(2);
            String why = row.getString(3);
            failed[channel] = why == null ? null : new Reading.Failed(Failure.valueOf(why), row.getLong(4));
            gaps.next();
        }
    }

    @Override
    public void close() throws SQLException {
        scans.close();
        gaps.close();
    }
}
