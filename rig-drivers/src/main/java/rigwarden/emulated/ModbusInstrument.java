package rigwarden.emulated;

import java.util.Arrays;
import java.util.Optional;
import rigwarden.loop.Clock;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;

/**
 * A programmable source or sink that speaks Modbus RTU, from the standard's text alone: MODBUS Application Protocol
 * V1.1b3 and MODBUS over Serial Line V1.02. Silence ends a frame. A frame with a wrong check or for another station is
 * not answered; address 0 is obeyed by all and answered by none; what cannot be done is answered by an exception. It
 * keeps doing what it was last told, unless its map has a time after which it switches off.
 */
public final class ModbusInstrument implements FarEnd {
    private static final double PROTECTION_MARGIN = 1.1;
    private static final int ILLEGAL_FUNCTION = 1;
    private static final int ILLEGAL_ADDRESS = 2;
    private static final int ILLEGAL_VALUE = 3;
    private static final int EXCEPTION = 0x80;
    private static final int COIL_ON = 0xFF00;
    private static final int MOST_REGISTERS = 125;
    private static final int MOST_BITS = 2000;

    private final RegisterMap map;
    private final ModbusBank bank;
    private final Terminals terminals;
    private final ScpiInstrument.Errors errors;
    private final ScpiInstrument.Ratings ratings;
    private final Clock clock;
    private byte[] arrived = {};
    private ModbusAnswer answer = new ModbusAnswer();
    private boolean on;
    private double volts;
    private double amps;
    /** Own limit: volts of a source, amperes of a sink. */
    private double limit;
    private double linkSeconds;
    private long heardNanos;
    private boolean deaf;
    private boolean protectedItself;

    /** An instrument that has just been switched on: output off, settings 0, no time-out. */
    public ModbusInstrument(RegisterMap map, Terminals terminals, ScpiInstrument.Errors errors,
            ScpiInstrument.Ratings ratings, Clock clock) {
        this.map = map;
        bank = new ModbusBank(map);
        this.terminals = terminals;
        this.errors = errors;
        this.ratings = ratings;
        this.clock = clock;
        limit = PROTECTION_MARGIN * (guardsVolts() ? ratings.volts() : ratings.amps());
        heardNanos = clock.nanos();
    }

    private boolean guardsVolts() {
        return map.setVolts().isPresent();
    }

    @Override
    public ModbusInstrument copy(Terminals newTerminals, VirtualClock newClock) {
        ModbusInstrument copy = new ModbusInstrument(map, newTerminals, errors, ratings, newClock);
        copy.arrived = arrived.clone();
        copy.answer = answer.copy();
        copy.on = on;
        copy.volts = volts;
        copy.amps = amps;
        copy.limit = limit;
        copy.linkSeconds = linkSeconds;
        copy.heardNanos = heardNanos;
        copy.deaf = deaf;
        copy.protectedItself = protectedItself;
        return copy;
    }

    @Override
    public void receive(byte[] bytes, int length) {
        int before = arrived.length;
        arrived = Arrays.copyOf(arrived, before + length);
        System.arraycopy(bytes, 0, arrived, before, length);
    }

    @Override
    public void still() {
        byte[] frame = arrived;
        arrived = new byte[0];
        boolean mine = ModbusFrame.whole(frame) && (frame[0] == 0 || (frame[0] & 0xFF) == map.station());
        if (!mine) {
            return;
        }
        heardNanos = clock.nanos();
        byte[] request = Arrays.copyOfRange(frame, 1, frame.length - 2);
        byte[] said = answer(request);
        if (frame[0] != 0) {
            byte[] content = new byte[said.length + 1];
            content[0] = frame[0];
            System.arraycopy(said, 0, content, 1, said.length);
            answer.add(ModbusFrame.closed(content));
        }
    }

    private byte[] answer(byte[] request) {
        int function = request[0] & 0xFF;
        return switch (function) {
            case 1, 2, 3, 4 -> request.length == 5 ? read(function, word(request, 1), word(request, 3)) : no(function, ILLEGAL_VALUE);
            case 5 -> request.length == 5 ? coil(request) : no(function, ILLEGAL_VALUE);
            case 6 -> request.length == 5 ? registers(request, word(request, 1), word(request, 3)) : no(function, ILLEGAL_VALUE);
            case 16 -> several(request);
            default -> no(function, ILLEGAL_FUNCTION);
        };
    }

    private static int word(byte[] bytes, int at) {
        return (bytes[at] & 0xFF) << 8 | bytes[at + 1] & 0xFF;
    }

    private static byte[] no(int function, int code) {
        return new byte[] {(byte) (function | EXCEPTION), (byte) code};
    }

    private byte[] read(int function, int address, int count) {
        boolean bits = function <= 2;
        if (count < 1 || count > (bits ? MOST_BITS : MOST_REGISTERS)) {
            return no(function, ILLEGAL_VALUE);
        }
        int bytes = bits ? (count + 7) / 8 : 2 * count;
        byte[] said = new byte[2 + bytes];
        said[0] = (byte) function;
        said[1] = (byte) bytes;
        for (int i = 0; i < count; i++) {
            Optional<ModbusBank.Place> place = bank.read(function, address + i);
            if (place.isEmpty()) {
                return no(function, ILLEGAL_ADDRESS);
            }
            int shown = ModbusBank.shown(place.get(), value(place.get().number()));
            if (bits) {
                said[2 + i / 8] |= (byte) ((shown & 1) << i % 8);
            } else {
                said[2 + 2 * i] = (byte) (shown >> 8);
                said[3 + 2 * i] = (byte) shown;
            }
        }
        return said;
    }

    private double value(ModbusBank.Figure number) {
        return switch (number) {
            case VOLTS -> terminals.volts() * (1 + errors.gainVolts()) + errors.offsetVolts();
            case AMPS -> terminals.amps() * (1 + errors.gainAmps()) + errors.offsetAmps();
            case STATE -> on ? 1 : 0;
            case SET_VOLTS -> volts;
            case SET_AMPS -> amps;
            case LIMIT -> limit;
            case LINK -> linkSeconds;
        };
    }

    private byte[] coil(byte[] request) {
        int value = word(request, 3);
        Optional<ModbusBank.Place> place =
                bank.written(word(request, 1)).filter(p -> p.register().type() == Register.Type.BIT);
        if (place.isEmpty()) {
            return no(5, ILLEGAL_ADDRESS);
        }
        if (value != 0 && value != COIL_ON) {
            return no(5, ILLEGAL_VALUE);
        }
        return obey(place.get().number(), value == 0 ? 0 : 1) ? request : no(5, ILLEGAL_VALUE);
    }

    private byte[] several(byte[] request) {
        int count = request.length < 6 ? 0 : word(request, 3);
        if (count < 1 || count > 123 || request.length != 6 + 2 * count || (request[5] & 0xFF) != 2 * count) {
            return no(16, ILLEGAL_VALUE);
        }
        int[] words = new int[count];
        for (int i = 0; i < count; i++) {
            words[i] = word(request, 6 + 2 * i);
        }
        return registers(request, word(request, 1), words);
    }

    /** Writes whole numbers, one after the other; half a number is no address of this instrument. */
    private byte[] registers(byte[] request, int address, int... words) {
        int function = request[0];
        for (int i = 0; i < words.length; ) {
            Optional<ModbusBank.Place> place = bank.written(address + i).filter(p -> p.register().type() != Register.Type.BIT);
            int wide = place.map(p -> p.register().type().registers()).orElse(0);
            if (place.isEmpty() || place.get().word() != 0 || i + wide > words.length) {
                return no(function, ILLEGAL_ADDRESS);
            }
            double number = ModbusBank.number(place.get().register(), Arrays.copyOfRange(words, i, i + wide));
            if (!obey(place.get().number(), number)) {
                return no(function, ILLEGAL_VALUE);
            }
            i += wide;
        }
        return function == Register.WRITE_MANY ? Arrays.copyOf(request, 5) : request;
    }

    /** Carries out an order; false when the number is none that it may be given. */
    private boolean obey(ModbusBank.Figure number, double value) {
        double highest = switch (number) {
            case SET_VOLTS -> ratings.volts();
            case SET_AMPS -> ratings.amps();
            case STATE -> 1;
            case LIMIT -> PROTECTION_MARGIN * (guardsVolts() ? ratings.volts() : ratings.amps());
            case LINK, VOLTS, AMPS -> Double.MAX_VALUE;
        };
        if (!(value >= 0 && value <= highest * (1 + 1e-9))) {
            return false;
        }
        if (!deaf) {
            switch (number) {
                case SET_VOLTS -> volts = value;
                case SET_AMPS -> amps = value;
                case STATE -> on = value != 0;
                case LIMIT -> limit = value;
                case LINK -> linkSeconds = value;
                case VOLTS, AMPS -> throw new IllegalStateException(number + " is no order");
            }
            terminals.order(on, volts, amps);
        }
        return true;
    }

    @Override
    public void protect() {
        double seen = guardsVolts() ? terminals.volts() : terminals.amps();
        boolean over = on && seen > limit;
        boolean alone = on && linkSeconds > 0 && (clock.nanos() - heardNanos) * 1e-9 > linkSeconds;
        if (over || alone) {
            on = false;
            protectedItself |= over;
            terminals.order(false, volts, amps);
        }
    }

    @Override
    public boolean protectedItself() {
        return protectedItself;
    }

    @Override
    public void deaf(boolean newDeaf) {
        deaf = newDeaf;
    }

    @Override
    public int pending() {
        return answer.pending();
    }

    @Override
    public int take(byte[] into) {
        return answer.take(into);
    }

    @Override
    public void cut(int keep) {
        answer.cut(keep);
    }
}
