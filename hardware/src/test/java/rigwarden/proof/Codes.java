package rigwarden.proof;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Rig;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** Reads the codes of a scan once more with the channels of another rig. */
final class Codes {
    private Codes() {}

    static Scan read(Rig rig, Scan scan) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < scan.readings().size(); i++) {
            readings.add(switch (scan.readings().get(i)) {
                case Reading.Valid valid -> Reading.of(rig.channels().get(i), valid.code(), valid.takenNanos());
                case Reading.Failed failed -> failed;
            });
        }
        return new Scan(scan.number(), scan.nanos(), readings);
    }
}
