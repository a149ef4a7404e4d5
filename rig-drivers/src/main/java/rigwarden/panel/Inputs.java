package rigwarden.panel;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.gpio.digital.PullResistance;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.rig.Panel;
import rigwarden.rig.Role;
import rigwarden.warden.Failure;

/** The four senses: loop, coil feed, feedback, arm. They are read in each scan; the library's edges are not used. */
public final class Inputs {
    private interface Sense {
        int read() throws BusFailure;
    }

    private final Map<Role, Sense> senses = new EnumMap<>(Role.class);

    private Inputs() {}

    /** Claims the input lines of a panel that is all on the header. */
    public static Inputs claim(Context context, Panel panel) throws BusFailure {
        return claim(context, panel, new Expanders());
    }

    /**
     * Claims the input lines.
     *
     * @param expanders for lines that are not the header's own
     * @throws BusFailure when one cannot be claimed
     */
    public static Inputs claim(Context context, Panel panel, Expanders expanders) throws BusFailure {
        Inputs inputs = new Inputs();
        inputs.add(context, Role.LOOP, panel.loop(), expanders);
        inputs.add(context, Role.COIL_FEED, panel.coilFeed(), expanders);
        inputs.add(context, Role.FEEDBACK, panel.feedback(), expanders);
        inputs.add(context, Role.ARM, panel.arm(), expanders);
        return inputs;
    }

    private void add(Context context, Role role, int line, Expanders expanders) throws BusFailure {
        Optional<ExpanderLines> pins = expanders.of(line);
        if (pins.isPresent()) {
            senses.put(role, () -> pins.get().level(line));
            return;
        }
        try {
            DigitalInput own = context.create(DigitalInput.newConfigBuilder(context)
                    .id("input-" + role)
                    .address(line)
                    .pull(PullResistance.OFF)
                    .debounce(0L)
                    .build());
            senses.put(role, () -> level(own, role));
        } catch (RuntimeException e) {
            throw new BusFailure(Failure.NO_ANSWER, "input " + role + " on line " + line + " not claimed: "
                    + e.getMessage());
        }
    }

    /**
     * Reads one sense.
     *
     * @param role LOOP, COIL_FEED, FEEDBACK or ARM
     * @return 1 high, 0 low
     * @throws BusFailure when the library cannot say
     */
    public int read(Role role) throws BusFailure {
        return senses.get(role).read();
    }

    private static int level(DigitalInput line, Role role) throws BusFailure {
        DigitalState state;
        try {
            state = line.state();
        } catch (RuntimeException e) {
            throw new BusFailure(Failure.NO_ANSWER, "input " + role + " not read: " + e.getMessage());
        }
        return switch (state) {
            case HIGH -> 1;
            case LOW -> 0;
            case UNKNOWN -> throw new BusFailure(Failure.NO_ANSWER, "input " + role + " is in no known state");
        };
    }
}
