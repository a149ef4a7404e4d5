package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/**
 * Time that one bus needs in the fullest scan: the one in which every chip on it is due.
 *
 * @param bus number of the bus
 * @param bits clock periods of all transfers
 * @param hertz clock of the bus
 * @param conversionSeconds time in which the bus waits for a multiplexed converter, s
 * @param scanSeconds period of the scan, s
 */
public record WireTime(int bus, int bits, int hertz, double conversionSeconds, double scanSeconds) {
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

    /** Every bus of a rig, by number. */
    public static List<WireTime> of(Rig rig) {
        List<WireTime> times = new ArrayList<>();
        new TreeMap<>(rig.busHertz()).forEach((bus, hertz) -> {
            int bits = rig.shunt().bus() == bus ? INA228_BITS : 0;
            double waiting = 0;
            Set<Integer> converters = new HashSet<>();
            for (VoltageInput input : rig.inputs()) {
                if (input.bus() == bus) {
                    bits += ADS1115_BITS + (converters.add(input.address()) ? ADS1115_REFERENCE_BITS : 0);
                    waiting += ADS1115_CONVERSION_S;
                }
            }
            for (Probe probe : rig.probes()) {
                bits += probe.bus() == bus ? MCP9601_BITS : 0;
            }
            times.add(new WireTime(bus, bits, hertz, waiting, rig.scanNanos() * 1e-9));
        });
        return List.copyOf(times);
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
