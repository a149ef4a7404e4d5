package rigwarden.emulated;

import java.nio.ByteBuffer;
import java.util.Optional;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;

/** Which number of an instrument lies at an address, and how it looks there. */
final class ModbusBank {
    private static final int INPUT_BITS = 2;
    private static final int INPUT_REGISTERS = 4;

    /** A number of an instrument. */
    enum Figure {
        VOLTS,
        AMPS,
        STATE,
        SET_VOLTS,
        SET_AMPS,
        LIMIT,
        LINK
    }

    /**
     * One of its places.
     *
     * @param word which of the registers of that number, from 0
     */
    record Place(Figure number, Register register, int word) {}

    private final RegisterMap map;

    ModbusBank(RegisterMap map) {
        this.map = map;
    }

    /** What function 1 to 4 finds at an address. What is written by 5, 6 or 16 can be read by 1 or 3 as well. */
    Optional<Place> read(int function, int address) {
        boolean inputs = function == INPUT_BITS || function == INPUT_REGISTERS;
        boolean bits = function <= INPUT_BITS;
        return at(map.volts(), Figure.VOLTS, function, address)
                .or(() -> at(map.amps(), Figure.AMPS, function, address))
                .or(() -> at(map.on(), Figure.STATE, function, address))
                .or(() -> at(map.limitBack(), Figure.LIMIT, function, address))
                .or(() -> map.link().flatMap(link -> at(link.back(), Figure.LINK, function, address)))
                .or(() -> inputs ? Optional.empty() : written(address).filter(p -> bits == (p.register().type() == Register.Type.BIT)));
    }

    private static Optional<Place> at(Register register, Figure number, int function, int address) {
        return register.function() == function ? at(register, number, address) : Optional.empty();
    }

    private static Optional<Place> at(Register register, Figure number, int address) {
        int word = address - register.address();
        int words = switch (register.type()) {
            case BIT, U16, S16 -> 1;
            case U32, S32, F32 -> 2;
        };
        return word >= 0 && word < words ? Optional.of(new Place(number, register, word)) : Optional.empty();
    }

    /** What can be written at an address. */
    Optional<Place> written(int address) {
        return map.setVolts().flatMap(r -> at(r, Figure.SET_VOLTS, address))
                .or(() -> at(map.setAmps(), Figure.SET_AMPS, address))
                .or(() -> at(map.power(), Figure.STATE, address))
                .or(() -> at(map.limit(), Figure.LIMIT, address))
                .or(() -> map.link().flatMap(link -> at(link.time(), Figure.LINK, address)));
    }

    /** One register of a number; what does not fit is shown as far as it goes. */
    static int shown(Place place, double value) {
        Register register = place.register();
        double counts = value / register.scale();
        ByteBuffer four = ByteBuffer.allocate(4);
        switch (register.type()) {
            case BIT, U16 -> { return (int) Math.max(0, Math.min(0xFFFF, Math.rint(counts))); }
            case S16 -> { return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.rint(counts))) & 0xFFFF; }
            case U32 -> four.putInt(0, (int) (long) Math.max(0, Math.min(0xFFFF_FFFFL, Math.rint(counts))));
            case S32 -> four.putInt(0, (int) Math.rint(counts));
            case F32 -> four.putFloat(0, (float) counts);
        }
        boolean upper = register.lowFirst() == (place.word() == 1);
        return four.getShort(upper ? 0 : 2) & 0xFFFF;
    }

    /** The number that stands in whole registers. */
    static double number(Register register, int... words) {
        ByteBuffer four = ByteBuffer.allocate(4);
        if (words.length == 2) {
            four.putShort(0, (short) words[register.lowFirst() ? 1 : 0]);
            four.putShort(2, (short) words[register.lowFirst() ? 0 : 1]);
        }
        return register.scale() * switch (register.type()) {
            case BIT, U16 -> words[0];
            case S16 -> (short) words[0];
            case U32 -> four.getInt(0) & 0xFFFF_FFFFL;
            case S32 -> four.getInt(0);
            case F32 -> four.getFloat(0);
        };
    }
}
