package rigwarden.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.rig.Channel;
import rigwarden.rig.Channels;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;
import rigwarden.warden.Reading;

/** Cells of an island: each is its tap less the tap below. The taps' own codes stay in the scan beside them. */
final class Differences {
    /** A cell, its tap, and the tap below where there is one. */
    private record Difference(Channel cell, Channel tap, Optional<Channel> below) {}

    private final List<Difference> cells = new ArrayList<>();
    private final Table table;

    Differences(Rig rig, Table table) {
        this.table = table;
        for (VoltageInput input : rig.inputs()) {
            if (input.role() == Role.TAP_VOLTS) {
                cells.add(new Difference(rig.column(Channels.cellName(input.cell())).orElseThrow(),
                        rig.column(input.name()).orElseThrow(),
                        Channels.below(input, rig.inputs()).flatMap(below -> rig.column(below.name()))));
            }
        }
    }

    /** A cell is as old as the older of its taps, and fails with either. */
    void read() {
        for (Difference cell : cells) {
            Reading upper = table.reading(cell.tap());
            switch (upper) {
                case Reading.Failed failed -> table.failed(cell.cell(), failed.why());
                case Reading.Valid valid -> {
                    if (cell.below().isEmpty()) {
                        table.value(cell.cell(), valid.value(), valid.takenNanos());
                    } else {
                        less(cell, valid, table.reading(cell.below().get()));
                    }
                }
            }
        }
    }

    private void less(Difference cell, Reading.Valid upper, Reading lower) {
        switch (lower) {
            case Reading.Failed failed -> table.failed(cell.cell(), failed.why());
            case Reading.Valid valid -> table.value(cell.cell(), upper.value() - valid.value(),
                    Math.min(upper.takenNanos(), valid.takenNanos()));
        }
    }
}
