package rigwarden.emulated;

import rigwarden.rig.Converter;
import rigwarden.rig.Expander;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.ShuntMonitor;
import rigwarden.rig.SpiPlace;

/** Where a chip of an emulated rig hangs. */
public sealed interface ChipPlace {
    /** On an I2C bus. */
    record OnI2c(int bus, int address) implements ChipPlace {}

    /** On an SPI bus. */
    record OnSpi(SpiPlace at) implements ChipPlace {}

    /** Of the shunt's chip. */
    static OnI2c of(ShuntMonitor shunt) {
        return new OnI2c(shunt.bus(), shunt.address());
    }

    /** Of an expander. */
    static OnI2c of(Expander expander) {
        return new OnI2c(expander.bus(), expander.address());
    }

    /** Of the chip behind a voltage input. */
    static ChipPlace of(Converter converter) {
        return switch (converter) {
            case Converter.Ads1115 own -> new OnI2c(own.bus(), own.address());
            case Converter.Ads1220 own -> new OnSpi(own.at());
        };
    }

    /** Of the chip behind a probe. */
    static ChipPlace of(ProbeChip chip) {
        return switch (chip) {
            case ProbeChip.Mcp9601 own -> new OnI2c(own.bus(), own.address());
            case ProbeChip.Max31856 own -> new OnSpi(own.at());
            case ProbeChip.Max31855 own -> new OnSpi(own.at());
        };
    }
}
