package rigwarden.rigfile;

import java.util.List;
import rigwarden.rig.Device;
import rigwarden.rig.Instrument;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;

/** Whether a register map can carry what this rig says over it. */
final class RegisterChecks {
    /** A set point in coarser steps than this share of the rating is no set point. */
    private static final double COARSEST = 0.01;
    /** Bits of a character on the line, and of the silences around two frames (MODBUS over Serial Line V1.02, 2.5.1). */
    private static final int CHARACTER_BITS = 11;
    private static final int FRAMES = 2 * (8 + 4);
    /** Common practice for the time that an instrument takes to answer, s (no source). */
    private static final double ANSWER_SECONDS = 0.02;
    private static final double LONGEST_LINK_POLLS = 20;

    private final Page page;
    private final Sketch sketch;
    private final Device.Programmed device;
    private final Instrument instrument;
    private final RegisterMap map;

    RegisterChecks(Page page, Sketch sketch, Device.Programmed device, RegisterMap map) {
        this.page = page;
        this.sketch = sketch;
        this.device = device;
        instrument = device.instrument();
        this.map = map;
    }

    void check() {
        double volts = instrument.maxVolts();
        double amps = instrument.maxAmps();
        holds("volts", map.volts(), volts, "V", Double.MAX_VALUE);
        holds("amps", map.amps(), amps, "A", Double.MAX_VALUE);
        map.setVolts().ifPresent(register -> holds("set_volts", register, volts, "V", volts * COARSEST));
        holds("set_amps", map.setAmps(), amps, "A", amps * COARSEST);
        double limit = device.charges() ? volts : amps;
        String unit = device.charges() ? "V" : "A";
        holds("limit", map.limit(), limit, unit, limit * COARSEST);
        holds("limit_back", map.limitBack(), limit, unit, limit * COARSEST);
        map.link().ifPresent(this::link);
        twice();
        slow();
    }

    private String key(String key) {
        return sketch.key(device, "modbus." + key);
    }

    private void holds(String key, Register register, double most, String unit, double coarsest) {
        if (register.most() < most) {
            page.refuse(RefusalKind.REGISTER_NARROW, key(key), "at most " + Figures.of(register.most(), unit),
                    "at least " + Figures.of(most, unit), "the rating of this instrument must fit into it",
                    "Look at type and scale.");
        }
        if (register.step() > coarsest) {
            page.refuse(RefusalKind.REGISTER_COARSE, key(key), "steps of " + Figures.of(register.step(), unit),
                    "steps of at most " + Figures.of(coarsest, unit), "a cell is charged to hundredths of a volt, not to steps",
                    "Look at the scale; an instrument that is truly so coarse is not for this rig.");
        }
    }

    private void link(RegisterMap.LinkTime link) {
        double poll = instrument.pollNanos() * 1e-9;
        double least = 2 * poll;
        double most = LONGEST_LINK_POLLS * poll;
        if (link.seconds() < least || link.seconds() > most) {
            page.refuse(RefusalKind.LINK_TIME_SHORT, key("link_s"), Figures.of(least, "s") + " to " + Figures.of(most, "s"),
                    "it must outlive two polls, and keep its last output for no longer than it must",
                    "Take about three polls.");
        }
        holds("link_time", link.time(), link.seconds(), "s", link.seconds() / 2);
        holds("link_time_back", link.back(), link.seconds(), "s", link.seconds() / 2);
    }

    private void twice() {
        List<Register> written = map.written();
        for (int i = 0; i < written.size(); i++) {
            for (int j = i + 1; j < written.size(); j++) {
                Register a = written.get(i);
                Register b = written.get(j);
                if (a.bit() == b.bit() && a.address() < b.end() && b.address() < a.end()) {
                    page.refuse(RefusalKind.REGISTER_TWICE, sketch.key(device, "modbus"),
                            "two numbers at address " + Math.max(a.address(), b.address()), "a register of its own for each",
                            "one order would undo the other", "Look into the instrument's manual.");
                    return;
                }
            }
        }
    }

    private void slow() {
        double wire = map.polled().size() * FRAMES * CHARACTER_BITS / (double) instrument.baud()
                + map.polled().size() * ANSWER_SECONDS;
        double allowed = instrument.pollNanos() / 2.5e9;
        if (wire > allowed) {
            page.refuse(RefusalKind.STATION_BAUD, sketch.key(device, "baud"),
                    Figures.of(wire, "s") + " for one poll", "at most " + Figures.of(allowed, "s"),
                    "an answer must be there in two fifths of a poll", "Set both ends faster, or poll more slowly.");
        }
    }
}
