package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rigwarden.rig.Device;
import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;

/**
 * The joints of a rig in the order of the path, from B+ round to B− and up the bars again: both ends of every power connection of the
 * wiring table that carries the current for hours.
 */
public final class JointPath {
    private final Rig rig;
    private final List<Joint> joints = new ArrayList<>();

    /**
     * One joint.
     *
     * @param place in the walk, from 1
     * @param name label of the connection and the end, as the wiring table has them
     * @param family of joints that are made alike
     * @param device source or sink whose current alone it carries; empty where every current goes through it
     */
    public record Joint(int place, String name, String family, Optional<Device> device) {}

    private JointPath(Rig rig) {
        this.rig = rig;
    }

    /** All joints. */
    public static List<Joint> of(Rig rig) {
        JointPath path = new JointPath(rig);
        List<Connection> power = Wiring.of(rig).stream().filter(connection -> connection.label().startsWith("P"))
                .filter(connection -> !aside(connection)).toList();
        power.stream().filter(connection -> !bar(connection)).forEach(path::ends);
        power.stream().filter(JointPath::bar).forEach(path::ends);
        return List.copyOf(path.joints);
    }

    /** Pre-charge and bleed carry the working current never. */
    private static boolean aside(Connection connection) {
        return connection.conductor().startsWith("pre-charge") || connection.conductor().startsWith("bleed");
    }

    private static boolean bar(Connection connection) {
        return connection.from().startsWith("cell ") && connection.to().startsWith("cell ");
    }

    private void ends(Connection connection) {
        Optional<Device> device = rig.devices().stream().filter(one -> touches(connection, one)).findFirst();
        String family = bar(connection) ? "bar on a stud" : "lug of a cable";
        for (String end : List.of(connection.from(), connection.to())) {
            joints.add(new Joint(joints.size() + 1, String.format(Locale.ROOT, "%s at %s", connection.label(), end), family, device));
        }
    }

    private boolean touches(Connection connection, Device device) {
        List<String> own = new ArrayList<>(List.of(device.name() + ", plus", device.name() + ", minus"));
        rig.path().stream().filter(part -> part.kind() == PathPart.Kind.RELAY && part.device().equals(device.name()))
                .map(PathPart::name).forEach(own::add);
        return own.contains(connection.from()) || own.contains(connection.to());
    }
}
