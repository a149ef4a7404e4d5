package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import rigwarden.rig.Converter;
import rigwarden.rig.Device;
import rigwarden.rig.Expander;
import rigwarden.rig.Panel;
import rigwarden.rig.Probe;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntChip;
import rigwarden.rig.VoltageInput;

/**
 * Time that one bus needs in the fullest scan: the one in which every chip on it is due.
 *
 * @param kind of bus
 * @param bus number of the bus
 * @param bits clock periods of all transfers
 * @param hertz clock of the bus
 * @param conversionSeconds time in which the bus waits for a multiplexed converter, s
 * @param scanSeconds period of the scan, s
 */
public record WireTime(Kind kind, int bus, int bits, int hertz, double conversionSeconds, double scanSeconds) {
    /** Kinds of bus. */
    public enum Kind { I2C, SPI }

    /** Start or stop condition, each counted as one clock (UM10204, 3.1.4). */
    private static final int CONDITION = 1;
    /** Eight bits and their acknowledge (UM10204, 3.1.5 and 3.1.6). */
    private static final int BYTE = 9;
    /** ADS1115 at 250 samples a second, clock up to 10 % slow; from memory (SBAS444E, electrical characteristics). */
    private static final double ADS1115_CONVERSION_S = 1.1 / 250;

    /** Clocks of a read of some bytes from a register: address, pointer, repeated start, address, bytes. */
    static int readBits(int bytes) {
        return CONDITION + 2 * BYTE + CONDITION + BYTE + bytes * BYTE + CONDITION;
    }

    /** Clocks of a write of some bytes to a register: address, pointer, bytes. */
    static int writeBits(int bytes) {
        return CONDITION + 2 * BYTE + bytes * BYTE + CONDITION;
    }

    /** ADC_CONFIG, DIAG_ALRT, CURRENT, CHARGE and VBUS; every ten seconds maker, device and SHUNT_CAL. */
    private static final int INA228_BITS = readBits(2) + readBits(2) + readBits(3) + readBits(5) + readBits(3) + 3 * readBits(2);
    /** Configuration written to start, configuration read, conversion read. */
    private static final int ADS1115_BITS = writeBits(2) + readBits(2) + readBits(2);
    /** Its threshold, every ten seconds. */
    private static final int ADS1115_REFERENCE_BITS = readBits(2);
    /** Both configurations, status and hot junction read, status written; every ten seconds its identity. */
    private static final int MCP9601_BITS = readBits(1) + readBits(1) + readBits(1) + readBits(2) + writeBits(1) + readBits(2);

    /** CONFIG, MASK_ENABLE at most three times, SHUNT and BUS; every ten seconds maker and die. */
    private static final int INA226_BITS = 8 * readBits(2);
    /** Directions, control, and pins with latches; DEFVAL read, written and read. */
    private static final int MCP23017_BITS = 3 * readBits(4) + 2 * readBits(2) + writeBits(2);
    /** One output of an expander: latch written, latch and directions read. */
    private static final int OUTPUT_BITS = writeBits(2) + 2 * readBits(2);
    /** All registers, the order to convert twice with its reading back; every ten seconds all registers. */
    private static final int MAX31856_BITS = 8 * (17 + 2 * (2 + 2) + 17);
    /** A frame; every ten seconds another. */
    private static final int MAX31855_BITS = 8 * (4 + 4);
    /** Input chosen, started, registers and result read. */
    private static final int ADS1220_BITS = 8 * (2 + 1 + 5 + 4);
    /** ADS1220 at 330 samples a second, with a tenth of room; from memory (SBAS501C, electrical characteristics). */
    private static final double ADS1220_CONVERSION_S = 1.1 / 330;

    /** Every bus of a rig: I2C, then SPI, each by number. */
    public static List<WireTime> of(Rig rig) {
        List<WireTime> times = new ArrayList<>();
        new TreeMap<>(rig.wires().i2cHertz()).forEach((bus, hertz) -> times.add(i2c(rig, bus, hertz)));
        new TreeMap<>(rig.wires().spiHertz()).forEach((bus, hertz) -> times.add(spi(rig, bus, hertz)));
        return List.copyOf(times);
    }

    private static WireTime i2c(Rig rig, int bus, int hertz) {
        int bits = rig.shunt().bus() == bus ? shuntBits(rig.shunt().chip()) : 0;
        double waiting = 0;
        Set<Converter> converters = new HashSet<>();
        for (VoltageInput input : rig.inputs()) {
            if (input.converter() instanceof Converter.Ads1115 chip && chip.bus() == bus) {
                bits += ADS1115_BITS + (converters.add(chip) ? ADS1115_REFERENCE_BITS : 0);
                waiting += ADS1115_CONVERSION_S;
            }
        }
        for (Probe probe : rig.probes()) {
            bits += probe.chip() instanceof ProbeChip.Mcp9601 chip && chip.bus() == bus ? MCP9601_BITS : 0;
        }
        for (Expander expander : rig.wires().expanders()) {
            bits += expander.bus() == bus ? MCP23017_BITS + OUTPUT_BITS * outputs(rig, expander) : 0;
        }
        return new WireTime(Kind.I2C, bus, bits, hertz, waiting, rig.scanNanos() * 1e-9);
    }

    private static int shuntBits(ShuntChip chip) {
        return switch (chip) {
            case INA228 -> INA228_BITS;
            case INA226 -> INA226_BITS;
        };
    }

    private static int outputs(Rig rig, Expander expander) {
        Panel panel = rig.panel();
        IntStream own = IntStream.of(panel.contactor(), panel.precharge(), panel.heartbeat(), panel.sounder());
        return (int) IntStream.concat(own, rig.devices().stream().mapToInt(Device::relay)).filter(expander::has).count();
    }

    private static WireTime spi(Rig rig, int bus, int hertz) {
        int bits = 0;
        double waiting = 0;
        for (VoltageInput input : rig.inputs()) {
            if (input.converter() instanceof Converter.Ads1220 chip && chip.at().bus() == bus) {
                bits += ADS1220_BITS;
                waiting += ADS1220_CONVERSION_S;
            }
        }
        for (Probe probe : rig.probes()) {
            bits += switch (probe.chip()) {
                case ProbeChip.Mcp9601 _ -> 0;
                case ProbeChip.Max31856 chip -> chip.at().bus() == bus ? MAX31856_BITS : 0;
                case ProbeChip.Max31855 chip -> chip.at().bus() == bus ? MAX31855_BITS : 0;
            };
        }
        return new WireTime(Kind.SPI, bus, bits, hertz, waiting, rig.scanNanos() * 1e-9);
    }

    /** The bus, as messages name it. */
    public String wire() {
        return switch (kind) {
            case I2C -> "bus " + bus;
            case SPI -> "SPI bus " + bus;
        };
    }

    /** Time on the wire with the conversions waited for, s. */
    public double seconds() {
        return (double) bits / hertz + conversionSeconds;
    }

    /** Part of the scan's period, 0…; more than 0.6 is refused. */
    public double share() {
        return seconds() / scanSeconds;
    }
}
