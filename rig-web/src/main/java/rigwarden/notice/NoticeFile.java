package rigwarden.notice;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import rigwarden.rigfile.KeyFile;
import rigwarden.rigfile.Keys;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RefusalKind;

/** Reads the file that says where notices go. Secrets are not in it: it names the file or variable that holds them. */
public final class NoticeFile {
    /** Its usual name, in the logbook's folder. */
    public static final String NAME = "notices.toml";

    private static final int LONGEST_URL = 400;
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "::1");
    private static final Pattern ADDRESS = Pattern.compile("[^\\s@<>,\\p{Cntrl}]{1,64}@[^\\s@<>,\\p{Cntrl}]{1,200}");
    private static final Set<What> ALL = EnumSet.complementOf(EnumSet.of(What.TEST));

    private final Path folder;
    private final UnaryOperator<String> environment;

    private NoticeFile(Path folder, UnaryOperator<String> environment) {
        this.folder = folder;
        this.environment = environment;
    }

    /**
     * Reads a file from disk; the files that it names are looked for beside it.
     *
     * @return the plan, or every refusal; nothing is thrown
     */
    public static Read<NoticePlan> read(Path path) {
        Path folder = path.toAbsolutePath().getParent();
        NoticeFile file = new NoticeFile(folder == null ? Path.of("/") : folder, System::getenv);
        return KeyFile.read(path, file::plan);
    }

    /** Reads a file that is already in memory. */
    static Read<NoticePlan> read(String name, String text, Path folder, UnaryOperator<String> environment) {
        return KeyFile.read(name, text, new NoticeFile(folder, environment)::plan);
    }

    /** Asks for every key; for a list of them. */
    public static void keys(Keys root) {
        new NoticeFile(Path.of("/"), _ -> null).plan(root).close();
    }

    private NoticePlan plan(Keys root) {
        int checkIn = root.whole("check_in_min", "min", 0, 1440,
                "silence is an alarm only where somebody knows how long is too long; 0 is none");
        int repeat = root.has("nearly_empty_every_h")
                ? root.whole("nearly_empty_every_h", "h", 1, 12, "cells below 15 % are to be recharged within 24 h")
                : 4;
        List<Route> routes = new ArrayList<>();
        if (root.has("web_hook")) {
            root.tables("web_hook", RefusalKind.MISSING_KEY, "a web hook is a way to a phone").forEach(k -> routes.add(hook(k)));
        }
        if (root.has("mail")) {
            root.tables("mail", RefusalKind.MISSING_KEY, "a mailbox is read on any machine").forEach(k -> routes.add(mail(k)));
        }
        if (!root.has("web_hook") && !root.has("mail")) {
            root.refuse(RefusalKind.MISSING_KEY, "web_hook", "at least one [[web_hook]] or [[mail]]",
                    "a file without any way tells nobody", "Add one.");
        }
        return new NoticePlan(checkIn, repeat, routes);
    }

    private WebHook hook(Keys keys) {
        String name = keys.text("name", "failures are told by the way's name");
        URI url = url(keys);
        WebHook.Form form = WebHook.Form.valueOf(
                keys.word("form", List.of("json", "text"), "the other end understands one of them").toUpperCase(Locale.ROOT));
        boolean file = keys.has("token_file");
        boolean variable = keys.has("token_env");
        Secret token = file || variable
                ? secret(keys, "token")
                : new Secret.None();
        Set<What> takes = takes(keys);
        keys.noOthers();
        return new WebHook(name, url, form, token, takes, PATIENCE);
    }

    private Mail mail(Keys keys) {
        String name = keys.text("name", "failures are told by the way's name");
        String host = keys.text("server", "mail is handed in there");
        int port = keys.whole("port", "", 1, 65_535, "a mail server listens on it: 587 with starttls, 465 with tls");
        Mail.Security security = Mail.Security.valueOf(keys.word("security", List.of("starttls", "tls", "none"),
                "a password in the clear is read on the way").toUpperCase(Locale.ROOT));
        boolean known = keys.has("user");
        String user = known ? keys.text("user", "most servers take mail only from users they know") : "";
        Secret password = known ? secret(keys, "password") : new Secret.None();
        if (known && security == Mail.Security.NONE && !LOOPBACK.contains(host) && keys.good("security")) {
            keys.refuse(RefusalKind.UNKNOWN_WORD, "security", "starttls or tls where there is a user",
                    "a password in the clear is read on the way", "");
        }
        String from = keys.text("from", "a mail has a sender");
        addresses(keys, "from", List.of(from));
        List<String> to = keys.texts("to", "somebody must get it");
        addresses(keys, "to", to);
        Set<What> takes = takes(keys);
        keys.noOthers();
        return new Mail(name, new Mail.Server(host, port, security, user, password), from, to, takes, PATIENCE);
    }

    private static void addresses(Keys keys, String key, List<String> all) {
        boolean plain = !all.isEmpty() && all.stream().allMatch(a -> ADDRESS.matcher(a).matches());
        if (!plain && keys.good(key)) {
            keys.refuse(RefusalKind.WRONG_TYPE, key, "NAME@HOST in quotes", "only such an address can be written to", "");
        }
    }

    private static URI url(Keys keys) {
        String text = keys.text("url", LONGEST_URL, "this is where it is posted to");
        try {
            URI url = new URI(text);
            boolean web = "https".equals(url.getScheme()) || "http".equals(url.getScheme());
            if (web && url.getHost() != null && url.getUserInfo() == null) {
                return url;
            }
        } catch (URISyntaxException _) {
            // Refused below, like every other text that is no address.
        }
        if (keys.good("url")) {
            keys.refuse(RefusalKind.WRONG_TYPE, "url", "https://HOST/… or http://HOST/…, without a name or password in it",
                    "only such an address can be posted to", "");
        }
        return URI.create("http://localhost/");
    }

    /** One of two keys says where a secret lies. */
    private Secret secret(Keys keys, String what) {
        String why = "a secret in a file that people show each other is none";
        boolean inFile = keys.has(what + "_file");
        boolean named = keys.has(what + "_env");
        String file = inFile ? keys.text(what + "_file", LONGEST_URL, why) : "";
        String variable = named || !inFile ? keys.text(what + "_env", why) : "";
        if (inFile && named) {
            keys.refuse(RefusalKind.UNKNOWN_KEY, what + "_env", "one of " + what + "_file and " + what + "_env",
                    "nobody could tell which of them holds", "Remove one of them.");
        }
        return inFile ? new Secret.InFile(folder.resolve(file)) : new Secret.InEnvironment(variable, environment);
    }

    private static Set<What> takes(Keys keys) {
        if (!keys.has("only")) {
            return EnumSet.allOf(What.class);
        }
        List<String> known = Arrays.stream(What.values()).filter(ALL::contains).map(What::word).toList();
        Set<What> takes = EnumSet.of(What.TEST);
        for (String word : keys.words("only", known, "some ways are for some news")) {
            if (known.contains(word)) {
                takes.add(What.valueOf(word.toUpperCase(Locale.ROOT)));
            }
        }
        return takes;
    }
}
