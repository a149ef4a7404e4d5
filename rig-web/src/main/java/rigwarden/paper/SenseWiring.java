package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Converter;
import rigwarden.rig.Device;
import rigwarden.rig.Probe;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.SpiPlace;
import rigwarden.rig.VoltageInput;

/** What measures: sense leads, probes, the links to chips and instruments. */
final class SenseWiring {
    private static final String LEAD = "0.25 mm², 0.5 A fuse at the stud";

    private final Rig rig;
    private final List<Connection> all = new ArrayList<>();
    private int leads;
    private int probes;
    private int links;

    private SenseWiring(Rig rig) {
        this.rig = rig;
    }

    static List<Connection> of(Rig rig) {
        SenseWiring wiring = new SenseWiring(rig);
        wiring.leads();
        rig.probes().forEach(wiring::probe);
        wiring.links();
        return wiring.all;
    }

    /** Where a voltage input's chip has its ground: the bottom of its island. */
    static String ground(Rig rig, VoltageInput input) {
        int lowest = rig.inputs().stream()
                .filter(other -> other.converter().equals(input.converter()) && other.role() == Role.TAP_VOLTS)
                .mapToInt(VoltageInput::cell).min().orElse(1);
        return lowest == 1 ? "B−" : Wiring.stud(lowest - 1);
    }

    static String chip(VoltageInput input) {
        String chip = switch (input.converter()) {
            case Converter.Ads1115 own -> i2c(own.chip(), own.bus(), own.address());
            case Converter.Ads1220 own -> spi(own.chip(), own.at());
        };
        return chip + ", AIN" + input.input();
    }

    static String chip(Probe probe) {
        return switch (probe.chip()) {
            case ProbeChip.Mcp9601 own -> i2c(own.chip(), own.bus(), own.address());
            case ProbeChip.Max31856 own -> spi(own.chip(), own.at());
            case ProbeChip.Max31855 own -> spi(own.chip(), own.at());
        };
    }

    private static String i2c(String chip, int bus, int address) {
        return "%s, bus %d, 0x%02x".formatted(chip, bus, address);
    }

    private static String spi(String chip, SpiPlace at) {
        return chip + ", " + at.wire() + (at.line().isPresent() ? ", select by line " + at.line().getAsInt() : ", select " + at.select());
    }

    /** Where the lead of an input begins. */
    static String place(Rig rig, VoltageInput input) {
        return input.role() == Role.BUS_VOLTS ? "bus+" : Wiring.stud(input.role() == Role.TAP_VOLTS ? input.cell() : rig.cells().series());
    }

    /** Where a probe sits. */
    static String place(Probe probe) {
        return switch (probe.place()) {
            case BODY -> "cell " + probe.cell() + ", body";
            case STUD -> "cell " + probe.cell() + (probe.positive() ? ", + stud" : ", − stud");
            case BAR -> "bar between cells " + probe.cell() + " and " + (probe.cell() + 1);
            case SHUNT_BODY -> "shunt";
            case CONTACTOR_BODY -> "K1";
            case ROOM -> "the room, away from cells and heater";
            case LOOSE -> "wherever a person lays it";
            case CURRENT, ACCUMULATED, CLOCK_RATIO, PACK_VOLTS, TAP_VOLTS, CELL_VOLTS, BUS_VOLTS, LOOP, COIL_FEED, FEEDBACK, ARM,
                    SOURCE_VOLTS, SOURCE_AMPS, SOURCE_ON, SINK_VOLTS, SINK_AMPS, SINK_ON, RECORDER_LAG, FREE_SPACE, LATENESS ->
                throw new IllegalArgumentException(probe.name() + " sits nowhere");
        };
    }

    private void leads() {
        String monitor = i2c(rig.shunt().chip().name(), rig.shunt().bus(), rig.shunt().address());
        lead("shunt, battery's side", monitor + ", IN−", "twisted pair from the shunt's own screws", "");
        lead("shunt, other side", monitor + ", IN+", "twisted with the lead before", "swapped leads show in the sign of the first small current");
        lead(Wiring.stud(rig.cells().series()), monitor + ", VBUS", LEAD, "the whole pack; a lead of its own");
        for (VoltageInput input : rig.inputs()) {
            String divider = input.divider() == 1 ? "" : "divider " + Wiring.plain(input.divider()) + " : 1; ";
            lead(place(rig, input), chip(input), input.role() == Role.BUS_VOLTS ? "0.25 mm², 0.5 A fuse at the bus" : LEAD,
                    input.name() + "; " + divider + "ground is " + ground(rig, input));
        }
        if (rig.guards().windowFitted()) {
            window();
        }
    }

    /** A window watches each cell by itself, by leads that it shares with nothing. */
    private void window() {
        String edges = "opens the loop above " + Wiring.plain(rig.guards().windowHighVolts()) + " V and below "
                + Wiring.plain(rig.guards().windowLowVolts()) + " V; a lead of its own";
        for (int cell = 1; cell <= rig.cells().series(); cell++) {
            lead(Wiring.stud(cell), "cell window of cell " + cell + ", plus", LEAD, edges);
            lead("cell " + cell + ", − stud", "cell window of cell " + cell + ", minus", LEAD, "the window's own ground, its 12 V isolated");
        }
    }

    private void probe(Probe probe) {
        probes++;
        String couple = probe.chip() instanceof ProbeChip.Max31855 own ? String.valueOf(own.letter()) : "T";
        all.add(new Connection("T" + probes, place(probe), chip(probe), "thermocouple type " + couple + ", insulated",
                probe.name() + (probe.place() == Role.ROOM ? "" : "; insulation tested before it is mounted")));
    }

    private void links() {
        rig.busHertz().keySet().stream().sorted().forEach(bus -> link("controller, I2C bus " + bus, "its chips", "isolated, supply and data",
                rig.busHertz().get(bus) / 1000 + " kHz"));
        rig.wires().spiHertz().keySet().stream().sorted().forEach(bus -> link("controller, SPI bus " + bus, "its chips", "supply, data and selects",
                rig.wires().spiHertz().get(bus) / 1000 + " kHz"));
        rig.inputs().stream().map(VoltageInput::converter).distinct().forEach(converter -> {
            if (converter instanceof Converter.Ads1220 own) {
                link("controller, line " + own.readyLine(), spi(own.chip(), own.at()), "supply, data and selects", "ready");
            }
        });
        for (Device device : rig.devices()) {
            if (device instanceof Device.Programmed programmed) {
                link("controller, " + programmed.instrument().port(), device.name(), "serial, isolated", programmed.instrument().baud() + " bit/s");
            }
        }
    }

    private void lead(String from, String to, String conductor, String note) {
        leads++;
        all.add(new Connection("S" + leads, from, to, conductor, note));
    }

    private void link(String from, String to, String conductor, String note) {
        links++;
        all.add(new Connection("B" + links, from, to, conductor, note));
    }
}
