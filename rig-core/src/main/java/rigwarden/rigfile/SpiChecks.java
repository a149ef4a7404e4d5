package rigwarden.rigfile;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import rigwarden.rig.Converter;
import rigwarden.rig.Envelope;
import rigwarden.rig.Probe;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.SpiPlace;

/** Whether SPI chips can share what they share, and live where they are. */
final class SpiChecks {
    /** MAX31855 and MAX31856, clock, Hz (19-5793, serial interface; from memory). */
    private static final int PROBE_HERTZ = 5_000_000;
    /** ADS1220, clock, Hz: a period of 150 ns (SBAS501C, timing requirements; from memory). */
    private static final int ADS1220_HERTZ = 6_600_000;
    private static final int ADS1220_MODE = 1;

    private final Page page;
    private final Rig rig;
    private final Map<String, Integer> lines = new LinkedHashMap<>();
    private final Map<String, String> alone = new HashMap<>();
    private final Map<String, String> shared = new HashMap<>();
    private final Map<String, Integer> modes = new HashMap<>();
    private final Map<Integer, Integer> buses = new HashMap<>();

    SpiChecks(Page page, Rig rig) {
        this.page = page;
        this.rig = rig;
    }

    /** Lines that the chips need on the header, by key. */
    Map<String, Integer> lines() {
        return lines;
    }

    void ads1220(Sketch.Adc adc, Converter.Ads1220 chip) {
        place(adc.key(), chip.at(), chip.chip(), ADS1220_HERTZ, ADS1220_MODE);
        lines.put(adc.key() + ".ready_line", chip.readyLine());
        if (chip.referenceVolts() > adc.supplyVolts()) {
            page.refuse(RefusalKind.REFERENCE_HIGH, adc.key() + (chip.external() ? ".reference_v" : ".supply_v"),
                    Figures.of(chip.referenceVolts(), "V") + " at " + Figures.of(adc.supplyVolts(), "V") + " of supply",
                    "at most " + Figures.of(adc.supplyVolts(), "V"), "the reference's pins die above the supply",
                    "Choose a lower reference or a higher supply.");
        }
    }

    void probe(String key, Probe probe, SpiPlace at, int mode) {
        ProbeChip chip = probe.chip();
        place(key, at, chip.chip(), PROBE_HERTZ, mode);
        if (probe.periodNanos() < chip.fastestSeconds() * 1e9) {
            page.refuse(RefusalKind.PROBE_HASTY, key + ".period_ms",
                    "at least " + Figures.of(chip.fastestSeconds() * 1e3, "ms") + ", in at most two scans",
                    "a " + chip.chip() + " needs that for one conversion", "Slow the scan, and read it every second one.");
        }
        bare(key, probe);
        switch (chip) {
            case ProbeChip.Mcp9601 _, ProbeChip.Max31856 _ -> { }
            case ProbeChip.Max31855 _ -> page.refuse(RefusalKind.NO_PROOF_OF_LIFE, key + ".chip", "max31856 or mcp9601",
                    "a MAX31855 that stands still says its last temperature for ever",
                    "Stay beside it, or fit a chip with a flag.");
        }
    }

    private void bare(String key, Probe probe) {
        double pack = rig.cells().series() * Envelope.HIGH_TRIP_V;
        boolean live = probe.place() != Role.ROOM;
        if (live && probe.insulatedVolts() < pack) {
            page.refuse(RefusalKind.PROBE_BARE, key + ".insulated_v", Figures.of(probe.insulatedVolts(), "V"),
                    "at least " + Figures.of(pack, "V"), bears(probe.chip()) + ", and its place may be at "
                            + Figures.of(pack, "V"), "Use an insulated bead, and test it.");
        }
    }

    private static String bears(ProbeChip chip) {
        return switch (chip) {
            case ProbeChip.Mcp9601 _ -> "an MCP9601's inputs stay within its supply";
            case ProbeChip.Max31856 _ -> "a MAX31856 measures at 0.5…1.4 V and dies beyond 45 V";
            case ProbeChip.Max31855 _ -> "a MAX31855 dies beyond its supply of 3.3 V";
        };
    }

    private void place(String key, SpiPlace at, String chip, int hertz, int mode) {
        Integer clock = rig.wires().spiHertz().get(at.bus());
        if (clock == null) {
            page.refuse(RefusalKind.UNKNOWN_BUS, key + ".spi_bus", "one of the [[spi_bus]] tables",
                    "the clock of its bus must be known", "Add a [[spi_bus]] table or correct the number.");
        } else if (clock > hertz) {
            page.refuse(RefusalKind.BUS_TOO_FAST, key + ".spi_bus", clock + " Hz on SPI bus " + at.bus(),
                    "at most " + hertz + " Hz", "the " + chip + " follows no faster clock", "Slow the bus down.");
        }
        at.line().ifPresent(line -> lines.put(key + ".select_line", line));
        select(key, at);
        Integer before = modes.putIfAbsent(at.node(), mode);
        if (before != null && before != mode) {
            page.refuse(RefusalKind.MODES_MIXED, key + ".select", at.select() + " for a chip of mode " + mode,
                    "a select with chips of that mode", "another chip on it needs mode " + before + ", and a node has one",
                    "Move one of the two to another select.");
        }
        Integer other = buses.putIfAbsent(at.select(), at.bus());
        if (other != null && other != at.bus()) {
            page.refuse(RefusalKind.SELECT_TWICE, key + ".select", at.select() + " on SPI bus " + at.bus(),
                    "a number that SPI bus " + other + " does not use", "the library for the header knows each number once",
                    "Use another select.");
        }
    }

    private void select(String key, SpiPlace at) {
        boolean own = at.line().isEmpty();
        String first = own ? alone.putIfAbsent(at.node(), key) : shared.putIfAbsent(at.node(), key);
        if (own && first != null) {
            page.refuse(RefusalKind.SAME_ADDRESS, key + ".select", String.valueOf(at.select()),
                    "a free select on SPI bus " + at.bus(), first + " has it", "Give it a select_line, or another select.");
        }
        if (alone.containsKey(at.node()) && shared.containsKey(at.node())) {
            page.refuse(RefusalKind.SELECT_MIXED, key + ".select", String.valueOf(at.select()),
                    "a select with one chip, or with select lines only",
                    "the node's own select falls with every transaction, so that two chips would speak",
                    "Move the chip without a select_line to a select of its own.");
        }
    }
}
