package rigwarden.rigfile;

import java.util.HashMap;
import java.util.Map;
import rigwarden.rig.Converter;
import rigwarden.rig.Envelope;
import rigwarden.rig.Expander;
import rigwarden.rig.Probe;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/** Buses, addresses, GPIO lines and wire time. */
final class WireChecks {
    /** MCP9601, highest clock of its I2C interface, Hz; from memory (DS20005426, serial interface). */
    private static final int MCP9601_HERTZ = 100_000;
    /** INA228 and ADS1115 in fast mode, Hz; from memory (SLYS021A and SBAS444E, I2C interface). */
    private static final int FAST_HERTZ = 400_000;
    /** MCP23017, Hz; from memory (DS20001952C, I2C interface: 1.7 MHz). */
    private static final int MCP23017_HERTZ = 1_000_000;

    private final Page page;
    private final Rig rig;
    private final Sketch sketch;
    private final Map<Integer, String> taken = new HashMap<>();

    WireChecks(Page page, Sketch sketch) {
        this.page = page;
        this.sketch = sketch;
        this.rig = sketch.rig();
    }

    void check() {
        chip("shunt", rig.shunt().bus(), rig.shunt().address(), rig.shunt().chip().name(), 0x40, 0x4f, FAST_HERTZ);
        SpiChecks spi = new SpiChecks(page, rig);
        for (Sketch.Adc adc : sketch.converters()) {
            switch (adc.converter()) {
                case Converter.Ads1115 own -> chip(adc.key(), own.bus(), own.address(), own.chip(), 0x48, 0x4b, FAST_HERTZ);
                case Converter.Ads1220 own -> spi.ads1220(adc, own);
            }
        }
        Map<String, String> pins = new HashMap<>();
        for (VoltageInput input : rig.inputs()) {
            String first = pins.putIfAbsent(input.converter() + " " + input.input(), input.name());
            if (first != null) {
                page.refuse(RefusalKind.SAME_ADDRESS, sketch.key(input, "pin"), "a pin of its own",
                        first + " is on it", "Name the pin where the wire ends.");
            }
        }
        for (Probe probe : rig.probes()) {
            String key = sketch.keys().get(probe.name());
            switch (probe.chip()) {
                case ProbeChip.Mcp9601 own -> chip(key, own.bus(), own.address(), own.chip(), 0x60, 0x67, MCP9601_HERTZ);
                case ProbeChip.Max31856 own -> spi.probe(key, probe, own.at(), 1);
                case ProbeChip.Max31855 own -> spi.probe(key, probe, own.at(), 0);
            }
        }
        for (Expander expander : rig.wires().expanders()) {
            chip(sketch.keys().get(expander.name()), expander.bus(), expander.address(), "MCP23017", 0x20, 0x27, MCP23017_HERTZ);
        }
        new LineChecks(page, sketch, spi.lines()).check();
        if (page.sound()) {
            wireTime();
        }
    }

    private void chip(String key, int bus, int address, String chip, int lowest, int highest, int hertz) {
        if (address < lowest || address > highest) {
            page.refuse(RefusalKind.ADDRESS_NOT_OF_CHIP, key + ".address", hex(address),
                    hex(lowest) + "…" + hex(highest),
                    "an " + chip + " can be strapped to nothing else", "Read the straps again.");
        }
        if (!rig.busHertz().containsKey(bus)) {
            page.refuse(RefusalKind.UNKNOWN_BUS, key + ".bus", "one of the [[bus]] tables",
                    "the clock of its bus must be known", "Add a [[bus]] table or correct the number.");
        } else if (rig.busHertz().get(bus) > hertz) {
            page.refuse(RefusalKind.BUS_TOO_FAST, key + ".bus", rig.busHertz().get(bus) + " Hz on bus " + bus,
                    "at most " + hertz + " Hz", "the " + chip + " follows no faster clock",
                    "Slow the bus down or move the chip to another.");
        }
        String first = taken.putIfAbsent((bus << 8) + address, key);
        if (first != null) {
            page.refuse(RefusalKind.SAME_ADDRESS, key + ".address", hex(address), "a free address on bus " + bus,
                    first + " has it", "Strap one of the two to another address.");
        }
    }

    private static String hex(int address) {
        return "0x" + Integer.toHexString(address);
    }

    private void wireTime() {
        for (WireTime time : WireTime.of(rig)) {
            if (time.share() > Envelope.WIRE_TIME_SHARE) {
                page.refuse(RefusalKind.WIRE_TIME, "scan_ms",
                        Figures.of(rig.scanNanos() * 1e-6, "ms") + " with " + Figures.of(time.seconds() * 1e3, "ms")
                                + " of wire time on " + time.wire(),
                        "at most " + Figures.of(100 * Envelope.WIRE_TIME_SHARE, "%") + " of it",
                        "a scan must end well before the next one begins",
                        "Slow the scan, speed up the bus or spread the chips over two.");
            }
        }
    }
}
