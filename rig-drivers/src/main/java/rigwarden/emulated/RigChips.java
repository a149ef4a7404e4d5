package rigwarden.emulated;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import rigwarden.rig.Converter;
import rigwarden.rig.Expander;
import rigwarden.rig.Probe;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Rig;
import rigwarden.rig.ShuntMonitor;
import rigwarden.rig.SpiPlace;
import rigwarden.rig.VoltageInput;

/** Every chip that a rig file names, at its place: the data sheets' emulators with one specimen's errors. */
final class RigChips {
    private final Map<ChipPlace.OnI2c, I2cPart<?>> i2c = new LinkedHashMap<>();
    private final Map<ChipPlace.OnSpi, SpiPart<?>> spi = new LinkedHashMap<>();

    private RigChips() {}

    /** Chips that have just been given their supply. */
    static RigChips fresh(Rig rig, Wirings wirings, Specimen specimen) {
        RigChips chips = new RigChips();
        chips.shunt(rig.shunt(), wirings, specimen);
        LinkedHashSet<Converter> converters = new LinkedHashSet<>();
        for (VoltageInput input : rig.inputs()) {
            if (converters.add(input.converter())) {
                chips.converter(input, wirings, specimen);
            }
        }
        for (int i = 0; i < rig.probes().size(); i++) {
            chips.probe(i, rig.probes().get(i), wirings, specimen);
        }
        for (Expander expander : rig.wires().expanders()) {
            chips.add(ChipPlace.of(expander), new Mcp23017Emulator(wirings.panel().expander(expander)),
                    (chip, others) -> chip.copy(others.panel().expander(expander)));
        }
        return chips;
    }

    private <T extends PoweredTarget> void add(ChipPlace.OnI2c at, T chip, BiFunction<T, Wirings, T> again) {
        i2c.put(at, new I2cPart<>(at, chip, again));
    }

    private <T extends SpiChip> void add(SpiPlace at, T chip, BiFunction<T, Wirings, T> again, BiConsumer<T, EmulatedBoard> pins) {
        spi.put(new ChipPlace.OnSpi(at), new SpiPart<>(at, chip, again, pins));
    }

    private void shunt(ShuntMonitor shunt, Wirings wirings, Specimen specimen) {
        ShuntWirings wires = wirings.shunt();
        switch (shunt.chip()) {
            case INA228 -> add(ChipPlace.of(shunt),
                    new Ina228Emulator(wires.summing(), specimen.chips().ina228(), specimen.noise("shunt")),
                    (chip, others) -> chip.copy(others.shunt().summing()));
            case INA226 -> add(ChipPlace.of(shunt),
                    new Ina226Emulator(wires.plain(), specimen.chips().ina226(), specimen.noise("shunt")),
                    (chip, others) -> chip.copy(others.shunt().plain()));
        }
    }

    private void converter(VoltageInput first, Wirings wirings, Specimen specimen) {
        switch (first.converter()) {
            case Converter.Ads1115 own -> add(new ChipPlace.OnI2c(own.bus(), own.address()),
                    new Ads1115Emulator(wirings.taps(own).ads1115(), specimen.chips().ads1115(first),
                            specimen.noise("converter " + (own.bus() << 8 | own.address()))),
                    (chip, others) -> chip.copy(others.taps(own).ads1115()));
            case Converter.Ads1220 own -> add(own.at(),
                    new Ads1220Emulator(wirings.taps(own).ads1220(own), specimen.chips().ads1220(first, own),
                            specimen.noise("converter " + own.at().node() + own.at().line())),
                    (chip, others) -> chip.copy(others.taps(own).ads1220(own)),
                    (chip, board) -> board.input(own.readyLine(), chip::readyPinHigh));
        }
    }

    private void probe(int bead, Probe probe, Wirings wirings, Specimen specimen) {
        switch (probe.chip()) {
            case ProbeChip.Mcp9601 own -> add(new ChipPlace.OnI2c(own.bus(), own.address()),
                    new Mcp9601Emulator(wirings.probe(bead).mcp9601(), specimen.chips().mcp9601(probe), specimen.noise(probe.name())),
                    (chip, others) -> chip.copy(others.probe(bead).mcp9601()));
            case ProbeChip.Max31856 own -> add(own.at(),
                    new Max31856Emulator(wirings.probe(bead).max31856(), specimen.chips().max31856(probe),
                            specimen.noise(probe.name())),
                    (chip, others) -> chip.copy(others.probe(bead).max31856()), (_, _) -> { });
            case ProbeChip.Max31855 own -> {
                Couple couple = Couple.valueOf(String.valueOf(own.letter()));
                add(own.at(),
                        new Max31855Emulator(Max31855Emulator.Version.valueOf(couple.name()),
                                wirings.probe(bead).max31855(couple), specimen.chips().max31855(probe), specimen.noise(probe.name())),
                        (chip, others) -> chip.copy(others.probe(bead).max31855(couple)), (_, _) -> { });
            }
        }
    }

    /** The same chips in the same state, with what is wrong with them, on other wires. */
    RigChips copy(Wirings wirings) {
        RigChips copy = new RigChips();
        i2c.forEach((at, part) -> copy.i2c.put(at, part.copy(wirings)));
        spi.forEach((at, part) -> copy.spi.put(at, part.copy(wirings)));
        return copy;
    }

    /** Takes over what is wrong with another rig's chips. */
    void sufferLike(RigChips other) {
        i2c.forEach((at, part) -> part.sufferLike(Objects.requireNonNull(other.i2c.get(at))));
        spi.forEach((at, part) -> part.sufferLike(Objects.requireNonNull(other.spi.get(at))));
    }

    void put(EmulatedBoard board) {
        i2c.values().forEach(part -> part.put(board));
        spi.values().forEach(part -> part.put(board));
    }

    void fail(EmulatedBoard board, ChipPlace where, ChipFault how) {
        switch (where) {
            case ChipPlace.OnI2c at -> Objects.requireNonNull(i2c.get(at), "a chip of the rig file").fail(board, how);
            case ChipPlace.OnSpi at -> Objects.requireNonNull(spi.get(at), "a chip of the rig file").fail(board, how);
        }
    }
}
