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
        if (routes.isEmpty() && !root.has("web_hook")) {
            root.refuse(RefusalKind.MISSING_KEY, "web_hook", "at least one [[web_hook]]",
                    "a file without any way tells nobody", "Add one.");
        }
        return new NoticePlan(checkIn, repeat, routes);
    }

    private WebHook hook(Keys keys) {
        String name = keys.text("name", "failures are told by the way's name");
        URI url = url(keys);
        WebHook.Form form = WebHook.Form.valueOf(
                keys.word("form", List.of("json", "text"), "the other end understands one of them").toUpperCase(Locale.ROOT));
        Secret token = keys.has("token_file") || keys.has("token_env")
                ? secret(keys, "token")
                : new Secret.None();
        Set<What> takes = takes(keys);
        keys.noOthers();
        return new WebHook(name, url, form, token, takes, PATIENCE);
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
        boolean inFile = keys.has(what + "_file");
        if (inFile && keys.has(what + "_env")) {
            keys.refuse(RefusalKind.UNKNOWN_KEY, what + "_env", "one of " + what + "_file and " + what + "_env",
                    "nobody could tell which of them holds", "Remove one of them.");
        }
        String why = "a secret in a file that people show each other is none";
        return inFile
                ? new Secret.InFile(folder.resolve(keys.text(what + "_file", LONGEST_URL, why)))
                : new Secret.InEnvironment(keys.text(what + "_env", why), environment);
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
