package rigwarden.serial;

import com.digitalpetri.modbus.ExceptionCode;
import com.digitalpetri.modbus.ModbusRtuResponseFrameParser;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Locale;
import java.util.Optional;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;

/** Registers instead of words: MODBUS Application Protocol V1.1b3 over Serial Line V1.02. Each request is answered. */
final class ModbusTongue implements Tongue {
    private static final double LARGEST = 1e6;
    private static final double LIMIT_RELATIVE = 0.001;
    private static final double LIMIT_LEAST = 0.01;
    private static final double TIME_LEAST = 0.001;
    /** In an answer it marks the function that was not carried out (V1.1b3, section 7). */
    private static final int EXCEPTION = 0x80;
    private static final int ECHO = 5;

    private final RegisterMap map;
    private final double limit;
    private final byte[] off;
    private final Deque<Exchange> coming = new ArrayDeque<>();
    private ModbusRtuResponseFrameParser parser = new ModbusRtuResponseFrameParser();
    private Optional<Exchange> open = Optional.empty();
    private byte[] request = {};
    private final double[] read = new double[3];
    private int place;
    private String complaint = "";

    ModbusTongue(RegisterMap map, double limit) {
        this.map = map;
        this.limit = limit;
        off = RtuFrame.of(map.station(), Exchange.write(map.power(), 0).request());
    }

    @Override
    public Turn begin(Act act, double volts, double amps) {
        coming.clear();
        place = 0;
        complaint = "";
        switch (act) {
            case NAME -> { }
            case LIMIT -> limit();
            case SET -> set(volts, amps);
            case ON -> {
                set(volts, amps);
                coming.add(Exchange.write(map.power(), 1));
            }
            case OFF -> coming.add(Exchange.write(map.power(), 0));
            case POLL -> map.polled().forEach(register -> coming.add(Exchange.read(register)));
        }
        return next();
    }

    /** An instrument that keeps its last output gets its own time-out first, where it has one. */
    private void limit() {
        map.link().ifPresent(link -> {
            coming.add(Exchange.write(link.time(), link.seconds()));
            coming.add(Exchange.readBack(link.back(), link.seconds(), TIME_LEAST + steps(link.time(), link.back())));
        });
        coming.add(Exchange.write(map.limit(), limit));
        coming.add(Exchange.readBack(map.limitBack(), limit,
                limit * LIMIT_RELATIVE + LIMIT_LEAST + steps(map.limit(), map.limitBack())));
    }

    private static double steps(Register written, Register back) {
        return written.step() + back.step();
    }

    private void set(double volts, double amps) {
        map.setVolts().ifPresent(register -> coming.add(Exchange.write(register, volts)));
        coming.add(Exchange.write(map.setAmps(), amps));
    }

    private Turn next() {
        open = Optional.ofNullable(coming.poll());
        if (open.isEmpty()) {
            return Turn.DONE;
        }
        request = RtuFrame.of(map.station(), open.orElseThrow().request());
        parser = new ModbusRtuResponseFrameParser();
        return Turn.ASK;
    }

    @Override
    public Turn sent() {
        return Turn.WRONG;
    }

    @Override
    public Turn take(byte next) {
        return switch (parser.parse(new byte[] {next})) {
            case ModbusRtuResponseFrameParser.Accumulated whole when whole.frame().unitId() == map.station()
                    && RtuFrame.sound(whole.frame()) -> answer(RtuFrame.pdu(whole.frame()));
            case ModbusRtuResponseFrameParser.Accumulated _, ModbusRtuResponseFrameParser.ParseError _ -> Turn.WRONG;
            case ModbusRtuResponseFrameParser.ParserState _ -> Turn.LISTEN;
        };
    }

    private Turn answer(byte[] pdu) {
        if (open.isEmpty()) {
            return Turn.WRONG;
        }
        Exchange exchange = open.orElseThrow();
        int function = exchange.register().function();
        if ((pdu[0] & 0xFF) == (function | EXCEPTION)) {
            complain(exchange.register(), pdu[1] & 0xFF);
            return Turn.REFUSED;
        }
        if (pdu[0] != function) {
            return Turn.WRONG;
        }
        return switch (exchange) {
            case Exchange.Write _ -> Arrays.equals(pdu, 0, Math.min(ECHO, pdu.length), request, 1, 1 + ECHO) ? next() : Turn.WRONG;
            case Exchange.Read one -> number(pdu, one.register()) && keep() ? next() : Turn.WRONG;
            case Exchange.ReadBack one -> number(pdu, one.register())
                    && Math.abs(read[place] - one.value()) <= one.within() ? next() : Turn.WRONG;
        };
    }

    /** Reads the one number of an answer; false when it is of another length, or no number. */
    private boolean number(byte[] pdu, Register register) {
        int expected = register.bit() ? 1 : 2 * register.type().registers();
        if (pdu.length != 2 + expected || (pdu[1] & 0xFF) != expected) {
            return false;
        }
        double value = register.bit()
                ? pdu[2] & 1
                : Counts.value(register, word(pdu, 2), expected == 2 ? 0 : word(pdu, 4));
        read[place] = value;
        return Math.abs(value) <= LARGEST;
    }

    private static int word(byte[] bytes, int at) {
        return (bytes[at] & 0xFF) << 8 | bytes[at + 1] & 0xFF;
    }

    private boolean keep() {
        place++;
        return place < read.length || read[2] == 0 || read[2] == 1;
    }

    private void complain(Register register, int code) {
        String name = ExceptionCode.from(code).map(c -> c.name().toLowerCase(Locale.ROOT).replace('_', ' ')).orElse("no known one");
        complaint = "exception " + code + ", " + name + ", to function " + register.function() + " at " + register.address();
    }

    @Override
    public byte[] bytes() {
        return request;
    }

    @Override
    public int length() {
        return request.length;
    }

    @Override
    public byte[] fresh() {
        return new byte[0];
    }

    @Override
    public byte[] off() {
        return off;
    }

    @Override
    public boolean overtakes() {
        return false;
    }

    @Override
    public double volts() {
        return read[0];
    }

    @Override
    public double amps() {
        return read[1];
    }

    @Override
    public boolean on() {
        return read[2] == 1;
    }

    @Override
    public String complaint() {
        return complaint;
    }
}
