package rigwarden.emulated;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;
import rigwarden.pack.Line;
import rigwarden.pack.World;
import rigwarden.rig.Device;
import rigwarden.rig.Expander;
import rigwarden.rig.Panel;
import rigwarden.rig.Rig;

/** What each line of a rig drives in the world or sees of it, be it the header's own or a pin of an expander. */
final class PanelLines {
    private final Rig rig;
    private final Wirings wirings;
    private final Map<Integer, Line> outputs = new LinkedHashMap<>();
    private final Map<Integer, Predicate<World>> inputs = new LinkedHashMap<>();

    PanelLines(Rig rig, Wirings wirings) {
        this.rig = rig;
        this.wirings = wirings;
        Panel panel = rig.panel();
        outputs.put(panel.contactor(), Line.CONTACTOR);
        outputs.put(panel.precharge(), Line.PRECHARGE);
        rig.devices().forEach(device -> outputs.put(device.relay(), relay(device)));
        outputs.put(panel.heartbeat(), Line.HEARTBEAT);
        outputs.put(panel.sounder(), Line.SOUNDER);
        inputs.put(panel.loop(), World::loopClosed);
        inputs.put(panel.coilFeed(), World::coilFeed);
        inputs.put(panel.feedback(), World::feedback);
        inputs.put(panel.arm(), World::armed);
    }

    private Line relay(Device device) {
        return device.charges() ? Line.source(wirings.place(device)) : Line.sink(wirings.place(device));
    }

    /** Ties the header's own lines. */
    void put(EmulatedBoard board) {
        outputs.forEach((number, line) -> {
            if (isHeaders(number)) {
                board.output(number, high -> drive(line, high));
            }
        });
        inputs.forEach((number, truth) -> {
            if (isHeaders(number)) {
                board.input(number, () -> truth.test(wirings.now()));
            }
        });
    }

    private boolean isHeaders(int number) {
        return rig.wires().expander(number).isEmpty();
    }

    /** A line is at this level from now on, whatever is written to it. */
    void stick(EmulatedBoard board, int number, boolean high) {
        if (isHeaders(number)) {
            board.sinks(number).forEach(sink -> sink.level(high));
        } else if (outputs.containsKey(number)) {
            drive(outputs.get(number), high);
        }
        wirings.defects().stuckLines.put(number, high);
    }

    /** Whoever was supplied has let go. */
    void dark(World world) {
        outputs.values().forEach(line -> world.line(line, false));
    }

    private void drive(Line line, boolean high) {
        if (!line.equals(Line.HEARTBEAT)) {
            wirings.catchUp();
        }
        if (line.equals(Line.CONTACTOR)) {
            wirings.contactorSwitched();
        }
        wirings.now().line(line, high);
    }

    /** The pins of an expander. Each coil's driver is held low where nobody drives it; what is not named hangs in the air. */
    Mcp23017Emulator.Wiring expander(Expander expander) {
        Map<Integer, Boolean> stuck = wirings.defects().stuckLines;
        return new Mcp23017Emulator.Wiring() {
            @Override
            public Mcp23017Emulator.Outside outside(int pin) {
                int number = expander.firstLine() + pin;
                if (stuck.containsKey(number)) {
                    return held(stuck.get(number));
                }
                if (inputs.containsKey(number)) {
                    return held(inputs.get(number).test(wirings.now()));
                }
                return outputs.containsKey(number) ? Mcp23017Emulator.Outside.PULLED_DOWN : Mcp23017Emulator.Outside.OPEN;
            }

            private Mcp23017Emulator.Outside held(boolean high) {
                return high ? Mcp23017Emulator.Outside.HIGH : Mcp23017Emulator.Outside.LOW;
            }

            @Override
            public void driven(int pin, boolean output, boolean high) {
                int number = expander.firstLine() + pin;
                if (outputs.containsKey(number) && !stuck.containsKey(number)) {
                    drive(outputs.get(number), output && high);
                }
            }
        };
    }
}
