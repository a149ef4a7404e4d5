package rigwarden.run;

import rigwarden.rig.Channel;
import rigwarden.rig.Protection;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Progress.Point;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;
import rigwarden.warden.Sides;
import rigwarden.warden.Tied;
import rigwarden.warden.Way;

/** What the machine looks at in a scan. A failed reading is never replaced by a made-up one: it is simply not there. */
final class Sight {
    private static final double NO_CURRENT_A = 1.0;
    private static final double SETTLED_K = 2;

    private final Channel current;
    private final Channel pack;
    private final Channel bus;
    private final Channel feedback;
    private final Channel arm;
    private final Channel coilFeed;
    private final Channel[] outputs;
    private final Channel room;
    private final Channel[] cells;
    private final Channel[] bodies;

    Sight(Rig rig) {
        current = rig.channel(Role.CURRENT);
        pack = rig.channel(Role.PACK_VOLTS);
        bus = rig.channel(Role.BUS_VOLTS);
        feedback = rig.channel(Role.FEEDBACK);
        arm = rig.channel(Role.ARM);
        coilFeed = rig.channel(Role.COIL_FEED);
        outputs = rig.channels().stream()
                .filter(c -> c.role() == Role.SOURCE_ON || c.role() == Role.SINK_ON)
                .toArray(Channel[]::new);
        room = rig.channel(Role.ROOM);
        cells = rig.channels(Role.CELL_VOLTS).toArray(Channel[]::new);
        bodies = rig.channels(Role.BODY).toArray(Channel[]::new);
    }

    private static boolean valid(Scan scan, Channel channel) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid;
    }

    private static double value(Scan scan, Channel channel) {
        return ((Reading.Valid) scan.readings().get(channel.index())).value();
    }

    boolean armed(Scan scan) {
        return valid(scan, arm) && value(scan, arm) > 0.5;
    }

    boolean closed(Scan scan) {
        return valid(scan, feedback) && value(scan, feedback) > 0.5;
    }

    boolean open(Scan scan) {
        return valid(scan, feedback) && value(scan, feedback) <= 0.5;
    }

    boolean noCurrent(Scan scan) {
        return valid(scan, current) && Math.abs(value(scan, current)) < NO_CURRENT_A;
    }

    private static boolean off(Scan scan, Channel channel) {
        return valid(scan, channel) && value(scan, channel) <= 0.5;
    }

    /** Everything open and off, and the bus below the pack: nothing holds it up, and a path may begin. */
    boolean atRest(Scan scan) {
        boolean rests = valid(scan, room) && open(scan) && noCurrent(scan) && Sides.below(scan, pack, bus);
        for (Channel output : outputs) {
            rests &= off(scan, output);
        }
        return rests;
    }

    /** The stage has let go: coil supply dead, contact open. */
    boolean letGo(Scan scan) {
        return open(scan) && off(scan, coilFeed);
    }

    boolean sidesMatch(Scan scan) {
        return Sides.match(scan, pack, bus);
    }

    /** Whether current and all cells are there, so that the account can go on. */
    boolean whole(Scan scan) {
        boolean whole = valid(scan, current);
        for (Channel cell : cells) {
            whole &= valid(scan, cell);
        }
        return whole;
    }

    /** A point of the trapezoid; ask {@link #whole} first. */
    Point point(Scan scan) {
        double volts = 0;
        for (Channel cell : cells) {
            volts += value(scan, cell);
        }
        double amps = value(scan, current);
        return new Point(scan.nanos(), amps, amps * volts, volts);
    }

    /** Voltage behind the contactor; ask {@link #busSeen} first. */
    double busVolts(Scan scan) {
        return value(scan, bus);
    }

    boolean busSeen(Scan scan) {
        return valid(scan, bus) && valid(scan, pack);
    }

    /** Whether the bus, without the pack, is lifted to where it could charge it. */
    boolean lifted(Scan scan) {
        return busSeen(scan) && !Sides.below(scan, pack, bus);
    }

    /** Whether bus and pack are one node, as far as can be told. */
    boolean tied(Scan scan) {
        return busSeen(scan) && Tied.tied(pack, value(scan, pack), bus, value(scan, bus));
    }

    /** Whether a cell is, or in the mean of the last second was, where the battery's protection opens this way. */
    boolean meets(Protection protection, Scan scan, double extreme, Way way) {
        double now = way == Way.CHARGE ? highest(scan) : lowest(scan);
        return Tied.meets(protection, cells[0], now, way) || Tied.meets(protection, cells[0], extreme, way);
    }

    double amps(Scan scan) {
        return value(scan, current);
    }

    double highest(Scan scan) {
        double highest = -Double.MAX_VALUE;
        for (Channel cell : cells) {
            highest = Math.max(highest, value(scan, cell));
        }
        return highest;
    }

    double lowest(Scan scan) {
        double lowest = Double.MAX_VALUE;
        for (Channel cell : cells) {
            lowest = Math.min(lowest, value(scan, cell));
        }
        return lowest;
    }

    double[] volts(Scan scan) {
        double[] volts = new double[cells.length];
        for (int i = 0; i < cells.length; i++) {
            volts[i] = value(scan, cells[i]);
        }
        return volts;
    }

    /** Whether every body's temperature is valid and, within its uncertainty, inside the limits. */
    boolean bodiesWithin(Scan scan, double low, double high) {
        for (Channel body : bodies) {
            double u = body.offsetU();
            if (!valid(scan, body) || value(scan, body) - u < low || value(scan, body) + u > high) {
                return false;
            }
        }
        return true;
    }

    double firstBodyCelsius(Scan scan) {
        return valid(scan, bodies[0]) ? value(scan, bodies[0]) : 0;
    }

    /**
     * How far each body's probe reads over the room's before any current: two probes that differ by no more than their
     * uncertainties explain are taken as equal then. A cell that really is warmer keeps its difference.
     */
    double[] zero(Scan scan) {
        double[] zero = new double[bodies.length];
        for (int i = 0; i < bodies.length; i++) {
            if (valid(scan, bodies[i]) && valid(scan, room)) {
                double over = value(scan, bodies[i]) - value(scan, room);
                zero[i] = Math.abs(over) <= Math.hypot(bodies[i].offsetU(), room.offsetU()) ? over : 0;
            }
        }
        return zero;
    }

    /** Whether every cell is within 2 K of the room, the probes' difference at the start taken off. */
    boolean nearRoom(Scan scan, double[] zeroKelvin) {
        if (!valid(scan, room)) {
            return false;
        }
        for (int i = 0; i < bodies.length; i++) {
            boolean near = valid(scan, bodies[i])
                    && Math.abs(value(scan, bodies[i]) - zeroKelvin[i] - value(scan, room)) <= SETTLED_K;
            if (!near) {
                return false;
            }
        }
        return true;
    }
}
