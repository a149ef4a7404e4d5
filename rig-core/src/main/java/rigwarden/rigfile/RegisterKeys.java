package rigwarden.rigfile;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;

/** Reads where the numbers of an instrument lie that speaks Modbus RTU. */
final class RegisterKeys {
    private static final String LIES = "a number that is read at the wrong place is another number";
    private static final String TYPE = "the same bits are another number in another type";
    private static final String SCALE = "a register holds counts";
    private static final List<String> NUMBERS =
            Stream.of(Register.Type.values()).filter(t -> t != Register.Type.BIT).map(Register.Type::word).toList();
    private static final List<String> STATES = List.of("bit", "u16");
    private static final int LAST_STATION = 247;
    private static final int LAST = 0xFFFF;
    private static final double THOUSANDTH = 0.001;

    /** What a number is counted in. */
    private enum Measure {
        VOLTS("V"),
        AMPS("A"),
        SECONDS("s"),
        STATE("");

        private final String unit;

        Measure(String unit) {
            this.unit = unit;
        }
    }

    private final Keys keys;

    private RegisterKeys(Keys keys) {
        this.keys = keys;
    }

    static RegisterMap map(Keys device, boolean source) {
        Keys keys = device.table("modbus", LIES).orElseGet(device::none);
        RegisterMap map = new RegisterKeys(keys).map(source);
        keys.noOthers();
        return map;
    }

    private RegisterMap map(boolean source) {
        Measure limited = source ? Measure.VOLTS : Measure.AMPS;
        return new RegisterMap(
                keys.whole("station", "", 1, LAST_STATION, "0 speaks to all at once, and nobody answers"),
                RegisterMap.Parity.valueOf(keys.word("parity", List.of("even", "odd", "none"),
                        "both ends must count alike").toUpperCase(Locale.ROOT)),
                read("volts", Measure.VOLTS),
                read("amps", Measure.AMPS),
                read("on", Measure.STATE),
                source ? Optional.of(written("set_volts", Measure.VOLTS)) : Optional.empty(),
                written("set_amps", Measure.AMPS),
                written("switch", Measure.STATE),
                written("limit", limited),
                read("limit_back", limited),
                link());
    }

    /** All three keys or none. */
    private Optional<RegisterMap.LinkTime> link() {
        boolean any = Stream.of("link_time", "link_time_back", "link_s").map(keys::has).reduce(false, Boolean::logicalOr);
        return any
                ? Optional.of(new RegisterMap.LinkTime(written("link_time", Measure.SECONDS),
                        read("link_time_back", Measure.SECONDS),
                        keys.number("link_s", "s", 0.2, 60, "after this silence it switches off by itself")))
                : Optional.empty();
    }

    private Register read(String key, Measure measure) {
        return register(key, measure, 1, 4);
    }

    private Register written(String key, Measure measure) {
        return register(key, measure, Register.WRITE_BIT, Register.WRITE_MANY);
    }

    private Register register(String key, Measure measure, int lowest, int highest) {
        Keys place = keys.table(key, LIES).orElseGet(keys::none);
        int function = place.whole("function", "", lowest, highest, "other functions do something else");
        int address = place.whole("address", "", 0, LAST, "it is sent in two bytes; manuals that count from 1 or 40001 mean one less");
        boolean state = measure == Measure.STATE;
        Register.Type type = Register.Type.valueOf(place.word("type", state ? STATES : NUMBERS, TYPE).toUpperCase(Locale.ROOT));
        boolean ordered = place.has("order") || type.registers() > 1;
        boolean lowFirst = ordered && place.word("order", List.of("high_first", "low_first"),
                "instruments differ in which register comes first").equals("low_first");
        Register register = new Register(function, address, type, lowFirst, state ? 1 : scale(place, measure));
        if (place.good("function") && place.good("type") && !fits(function, type)) {
            place.page().refuse(RefusalKind.REGISTER_MISFIT, place.full("function"), function + " with " + type.word(),
                    allowed(lowest == 1, type),
                    "functions 1, 2 and 5 carry bits, 3, 4 and 16 registers, 6 one register", "Look into the instrument's manual.");
        }
        if (place.good("address") && place.good("type") && register.end() > LAST + 1) {
            place.page().refuse(RefusalKind.REGISTER_BEYOND, place.full("address"), "at most " + (LAST + 1 - type.registers()),
                    "its last register would lie beyond address 65535", "");
        }
        place.noOthers();
        return register;
    }

    private static double scale(Keys place, Measure measure) {
        String unit = place.word("unit", List.of(measure.unit, "m" + measure.unit), "a count of volts is not one of millivolts");
        double count = place.number("scale", "", 1e-6, 1000, SCALE);
        return unit.startsWith("m") ? count * THOUSANDTH : count;
    }

    private static boolean fits(int function, Register.Type type) {
        boolean bits = function <= 2 || function == Register.WRITE_BIT;
        return bits == (type == Register.Type.BIT) && (function != Register.WRITE_ONE || type.registers() == 1)
                && (function <= Register.WRITE_ONE || function == Register.WRITE_MANY);
    }

    private static String allowed(boolean reads, Register.Type type) {
        if (type == Register.Type.BIT) {
            return reads ? "1 or 2 for a bit" : "5 for a bit";
        }
        String written = type.registers() == 1 ? "6 or 16" : "16";
        return (reads ? "3 or 4" : written) + " for " + type.word();
    }
}
