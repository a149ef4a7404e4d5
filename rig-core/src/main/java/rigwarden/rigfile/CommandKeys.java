package rigwarden.rigfile;

import java.util.List;
import java.util.regex.Pattern;
import rigwarden.rig.Commands;

/** Reads how orders are said to an instrument; what is left out is said in the usual way. */
final class CommandKeys {
    private static final int LONGEST = 80;
    private static final Pattern PLACE = Pattern.compile("\\{([^}]*)\\}");
    private static final String SAID = "orders go out word for word";

    private CommandKeys() {}

    static Commands commands(Keys device, boolean source) {
        Commands usual = Commands.usual(source);
        if (!device.has("commands")) {
            return usual;
        }
        Keys keys = device.table("commands", SAID).orElseGet(device::none);
        Commands commands = new Commands(
                message(keys, "identity", usual.identity(), List.of()),
                message(keys, "set", usual.set(), source ? List.of("volts", "amps") : List.of("amps")),
                message(keys, "on", usual.on(), List.of()),
                message(keys, "off", usual.off(), List.of()),
                message(keys, "limit", usual.limit(), List.of("limit")),
                question(keys, "ask_limit", usual.askLimit()),
                question(keys, "poll", usual.poll()),
                question(keys, "ask_error", usual.askError()));
        keys.noOthers();
        return commands;
    }

    private static String question(Keys keys, String key, String usual) {
        String text = message(keys, key, usual, List.of());
        if (keys.has(key) && keys.good(key) && !text.endsWith("?")) {
            keys.page().refuse(RefusalKind.COMMAND_WRONG, keys.full(key), text, "a question, which ends in ?",
                    "an instrument answers nothing else", "Look into the instrument's manual.");
        }
        return text;
    }

    /** One program message: printable ASCII, with each number's place once and no other. */
    private static String message(Keys keys, String key, String usual, List<String> numbers) {
        if (!keys.has(key)) {
            return usual;
        }
        String text = keys.text(key, SAID);
        boolean printable = text.chars().allMatch(c -> c >= ' ' && c <= '~') && text.length() <= LONGEST;
        List<String> places = PLACE.matcher(text).results().map(m -> m.group(1)).toList();
        if (!printable || !places.stream().sorted().toList().equals(numbers.stream().sorted().toList())) {
            keys.page().refuse(RefusalKind.COMMAND_WRONG, keys.full(key), text,
                    "printable ASCII, " + (numbers.isEmpty()
                            ? "no number"
                            : "with {" + String.join("} and {", numbers) + "} once each"),
                    "a number without its place would never reach the instrument", "Look into the instrument's manual.");
        }
        return text;
    }
}
