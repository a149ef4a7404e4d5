package rigwarden.rigfile;

import java.util.List;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntChip;

/** Whether every part of the current path can carry and interrupt what it may meet. */
final class PathChecks {
    /** Open-circuit voltage of a full cell at rest, V: common practice for LFP (no source). */
    private static final double FULL_V = 3.4;
    /** A current this far above the order must still be seen by the rule for it. */
    private static final double SEEN = 1.5;

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;

    PathChecks(Page page, Sketch sketch) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
    }

    void check() {
        if (none(PathPart.Kind.CONTACTOR)) {
            page.refuse(RefusalKind.NO_CONTACTOR, "path", "no contactor", "at least one part of kind contactor",
                    "it is the first way to stop", "Fit one and describe it.");
        }
        if (none(PathPart.Kind.FUSE) || none(PathPart.Kind.SHUNT)) {
            page.refuse(RefusalKind.NO_FUSE_OR_SHUNT, "path", "no fuse or no shunt", "one of each",
                    "a short circuit must end by itself and the current must be known", "Fit them and describe them.");
        }
        for (PathPart part : rig.path()) {
            device(part);
            switch (part.kind()) {
                case FUSE -> fuse(part);
                case CONTACTOR, RELAY -> breaker(part);
                case SHUNT, CABLE, BAR, LUG, PLUG -> {}
            }
        }
        shunt();
    }

    private void device(PathPart part) {
        List<String> names = rig.devices().stream().map(Device::name).toList();
        if (part.common() ? part.kind() == PathPart.Kind.RELAY : !names.contains(part.device())) {
            page.refuse(RefusalKind.PART_OF_NOTHING, key(part, "device"),
                    part.common() ? Refusal.NOTHING : part.device(), "one of " + String.join(", ", names),
                    "a relay stops one source or sink, and its rating is compared with that one's current",
                    Nearest.question(part.device(), names));
        }
    }

    private boolean none(PathPart.Kind kind) {
        return rig.path().stream().noneMatch(part -> part.kind() == kind && part.common());
    }

    private String key(PathPart part, String key) {
        return sketch.keys().get(part.name()) + "." + key;
    }

    private double highestVolts() {
        return rig.cells().series() * Envelope.HIGH_TRIP_V;
    }

    private void fuse(PathPart fuse) {
        for (PathPart part : rig.path()) {
            boolean conductor = switch (part.kind()) {
                case CABLE, BAR, LUG, PLUG -> true;
                case FUSE, SHUNT, CONTACTOR, RELAY -> false;
            };
            if (conductor && part.common() == fuse.common() && fuse.ratedAmps() > part.ratedAmps()) {
                page.refuse(RefusalKind.FUSE_OVER_CABLE, key(fuse, "rated_a"), Figures.of(fuse.ratedAmps(), "A"),
                        "at most " + Figures.of(part.ratedAmps(), "A") + ", the rating of " + part.name(),
                        "a fuse protects only what carries at least its rating",
                        "Fit a smaller fuse or a thicker conductor.");
            }
        }
        double shortAmps = FULL_V / sketch.cellOhms() * rig.cells().parallel();
        if (fuse.breaksAmps() < shortAmps) {
            page.refuse(RefusalKind.FUSE_CANNOT_BREAK, key(fuse, "breaks_a"), Figures.of(fuse.breaksAmps(), "A"),
                    "at least " + Figures.of(Math.ceil(shortAmps), "A"),
                    "cells of " + Figures.of(sketch.cellOhms() * 1e3, "mΩ") + " give that into a short circuit",
                    "Fit a fuse with a higher breaking capacity.");
        }
        if (fuse.breaksVolts() < highestVolts()) {
            page.refuse(RefusalKind.FUSE_CANNOT_BREAK, key(fuse, "breaks_v"), Figures.of(fuse.breaksVolts(), "V"),
                    "at least " + Figures.of(highestVolts(), "V"), "the arc would burn on", "Fit a d.c. fuse for it.");
        }
    }

    private void breaker(PathPart part) {
        double amps = rig.devices().stream()
                .filter(device -> part.common() || part.device().equals(device.name()))
                .mapToDouble(rig::ceilingAmps).max().orElse(0);
        String does = "it must end the highest current that this rig allows";
        if (part.breaksAmps() < amps) {
            page.refuse(RefusalKind.CONTACTOR_CANNOT_BREAK, key(part, "breaks_a"), Figures.of(part.breaksAmps(), "A"),
                    "at least " + Figures.of(amps, "A"), does, "Fit one that breaks it, or rate the path lower.");
        }
        if (part.breaksVolts() < highestVolts()) {
            page.refuse(RefusalKind.CONTACTOR_CANNOT_BREAK, key(part, "breaks_v"), Figures.of(part.breaksVolts(), "V"),
                    "at least " + Figures.of(highestVolts(), "V"), "the arc would burn on", "Fit one rated for d.c.");
        }
        if (sketch.oneWayBreakers().contains(part.name())) {
            page.refuse(RefusalKind.CONTACTOR_CANNOT_BREAK, key(part, "both_directions"), "true",
                    "charge and discharge flow in opposite directions", "Fit one without a polarity.");
        }
    }

    private void shunt() {
        double highest = Math.max(rig.chargeCeilingAmps(), rig.dischargeCeilingAmps());
        double reach = rig.shunt().fullScaleAmps();
        if (reach < SEEN * highest) {
            page.refuse(RefusalKind.SCALE_TOO_SHORT, "shunt.full_scale_a", Figures.of(reach, "A"),
                    "at least " + Figures.of(SEEN * highest, "A"), "150 % of the highest current must still be seen",
                    "Choose a longer scale or rate the path lower.");
        }
        ShuntChip chip = rig.shunt().chip();
        double volts = reach * rig.shunt().ohms();
        if (volts > chip.shuntVolts()) {
            page.refuse(RefusalKind.SCALE_BEYOND_CHIP, "shunt.full_scale_a",
                    Figures.of(reach, "A") + ", which is " + Figures.of(volts * 1e3, "mV"),
                    "at most " + Figures.of(chip.shuntVolts() / rig.shunt().ohms(), "A"),
                    "the " + chip + " reads up to " + Figures.of(chip.shuntVolts() * 1e3, "mV"), "Choose a shorter scale.");
        }
        if (highestVolts() > chip.busBearsVolts()) {
            page.refuse(RefusalKind.PART_DIES, "shunt.chip",
                    Figures.of(chip.busBearsVolts(), "V") + " part on " + rig.cells().series() + " cells: "
                            + Figures.of(highestVolts(), "V"),
                    "at most " + (int) (chip.busBearsVolts() / Envelope.HIGH_TRIP_V) + " cells with an " + chip,
                    "its bus pin is on the pack and dies above that", "Fit an INA228, which bears 85 V.");
        }
        if (!chip.accumulates()) {
            page.refuse(RefusalKind.NO_SECOND_SUM, "shunt.chip", "an INA228",
                    "an " + chip + " sums nothing: rule 37 has no second sum to compare, and a charge is the host's own sum",
                    "Fit an INA228 where the figure will be disputed.");
        }
    }
}
