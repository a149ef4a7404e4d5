package rigwarden.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.function.Function;
import java.util.function.Supplier;
import rigwarden.live.GoodNight;
import rigwarden.live.Snapshot;
import rigwarden.live.Watched;
import rigwarden.rig.Role;
import rigwarden.run.RunMachine;
import rigwarden.warden.Reading;
import rigwarden.warden.Request;

/** What an operator may ask for, once signed in and with the arm key turned at the rig. STOP is not here: it needs nothing. */
final class Asking {
    private static final String COOKIE = "rigwarden";
    private static final double ON = 0.5;

    private final Path folder;
    private final Supplier<Optional<Watched>> run;
    private final Function<Context, Shell> shell;
    private final Sessions sessions = new Sessions(System::nanoTime);
    private final Semaphore guessing = new Semaphore(1);

    Asking(Path folder, Supplier<Optional<Watched>> run, Function<Context, Shell> shell) {
        this.folder = folder;
        this.run = run;
        this.shell = shell;
    }

    void routes(RoutesConfig routes) {
        routes.get("/sign-in", ctx -> ctx.html(signIn(ctx, "")));
        routes.post("/sign-in", this::signIn);
        routes.post("/sign-out", ctx -> {
            sessions.close(String.valueOf(ctx.cookie(COOKIE)));
            ctx.redirect("/");
        });
        routes.post("/ask", this::ask);
    }

    /** Whether this visitor is signed in. */
    boolean operator(Context ctx) {
        return sessions.holds(ctx.cookie(COOKIE));
    }

    /** The forms that belong on Now for this visitor. */
    String forms(Context ctx) {
        Optional<GoodNight> first = run.get().flatMap(Watched::goodNight);
        String card = first.map(g -> "<div class=\"asks start\">" + CardHtml.of(g.card()) + "</div>").orElse("");
        if (!sessions.holds(ctx.cookie(COOKIE))) {
            return card + "<p class=\"asks small\"><a href=\"/sign-in\">Sign in</a> to start or to clear a trip. STOP needs no"
                    + " sign-in.</p>";
        }
        String tick = first.isEmpty() ? "" : """
                <label><input type="checkbox" name="card" value="read" required> I have read the card above and looked at the
                place</label>""";
        return card + """
                <form class="asks ask start" method="post" action="/ask"><input type="hidden" name="what" value="START">
                %s<button>%s</button> <span class="small">with the arm key turned</span></form>
                <form class="asks ask clear" method="post" action="/ask"><input type="hidden" name="what" value="CLEAR">
                <button>Clear the trip</button> <span class="small">with the cause gone and the arm key turned; it starts
                nothing</span></form>
                <form class="asks small" method="post" action="/sign-out"><button>Sign out</button></form>""".formatted(tick,
                run.get().flatMap(Watched::from).map(f -> "Go on with run " + f.run()).orElse("Start the programme"));
    }

    private String signIn(Context ctx, String said) {
        String form = Passphrase.isSet(folder)
                ? """
                <form class="ask" method="post" action="/sign-in"><label>Passphrase
                <input type="password" name="passphrase" autocomplete="current-password" required maxlength="200"></label>
                <button>Sign in</button></form>"""
                : "<p>No passphrase is set yet. At the rig's computer: <code>rigwarden operator</code>.</p>";
        return shell.apply(ctx).page(Shell.Area.NOW, "Sign in", "", "<h1>The operator</h1><p>" + said + "</p>" + form
                + "<p class=\"small\">Starting and clearing need this and the arm key at the rig. STOP needs nothing.</p>");
    }

    /** One guess at a time: hashing costs the board a good part of a second. */
    private void signIn(Context ctx) {
        String phrase = ctx.formParam("passphrase");
        if (!guessing.tryAcquire()) {
            ctx.status(503).html(signIn(ctx, "Somebody else is signing in; try again."));
            return;
        }
        try {
            if (phrase == null || !Passphrase.matches(folder, phrase.toCharArray())) {
                ctx.status(403).html(signIn(ctx, "That was not it."));
                return;
            }
        } finally {
            guessing.release();
        }
        Cookie cookie = new Cookie(COOKIE, sessions.open());
        cookie.setHttpOnly(true);
        cookie.setSameSite(SameSite.STRICT);
        cookie.setPath("/");
        cookie.setMaxAge((int) (Sessions.LASTS_NANOS / 1_000_000_000L));
        ctx.cookie(cookie);
        ctx.redirect("/");
    }

    private void ask(Context ctx) {
        if (!sessions.holds(ctx.cookie(COOKIE))) {
            ctx.status(403).html(signIn(ctx, "Sign in first."));
            return;
        }
        Optional<Watched> watched = run.get();
        Optional<Request> wanted = watched.flatMap(w -> wanted(ctx.formParam("what"), w));
        if (watched.isEmpty() || wanted.isEmpty()) {
            ctx.status(409).html(said(ctx, "Nothing runs that could be asked for that."));
        } else if (!armed(watched.orElseThrow())) {
            ctx.status(409).html(said(ctx, "The arm key at the rig is not turned. Turn it, then ask again."));
        } else if (wanted.orElseThrow() != Request.CLEAR && !read(ctx, watched.orElseThrow())) {
            ctx.status(409).html(said(ctx, "Read the good-night card, look at the place, and tick that you did; then ask again."));
        } else if (!watched.orElseThrow().desk().ask(wanted.orElseThrow())) {
            ctx.status(503).html(said(ctx, "Too much has been asked for already; wait for the next scan."));
        } else {
            if (wanted.orElseThrow() != Request.CLEAR) {
                watched.orElseThrow().goodNight().ifPresent(g -> g.confirmed().accept(
                        "an operator signed in on the page confirmed the good-night card and the look at the place: "
                                + g.card().summary()));
            }
            ctx.html(said(ctx, "Asked for. The warden grants it only where nothing speaks against it: a trip clears when its"
                    + " cause has been gone for long enough, a start needs every channel healthy."));
        }
    }

    private static boolean read(Context ctx, Watched run) {
        return run.goodNight().isEmpty() || "read".equals(ctx.formParam("card"));
    }

    /** A start is the one that this programme asks for, or going on where this run is to go on. */
    static Optional<Request> wanted(String what, Watched run) {
        return switch (String.valueOf(what)) {
            case "START" -> Optional.of(run.from().isPresent() ? Request.CONTINUE : RunMachine.start(run.program()));
            case "CLEAR" -> Optional.of(Request.CLEAR);
            case String _ -> Optional.empty();
        };
    }

    private String said(Context ctx, String words) {
        return shell.apply(ctx).page(Shell.Area.NOW, "Asked", "<meta http-equiv=\"refresh\" content=\"4; url=/\">",
                "<h1>Now</h1><p>" + Html.text(words) + "</p><p><a href=\"/\">Back to Now</a></p>");
    }

    private static boolean armed(Watched run) {
        Optional<Snapshot> now = run.live().now();
        return now.isPresent() && run.rig().channels(Role.ARM).stream()
                .anyMatch(arm -> now.orElseThrow().scan().readings().get(arm.index()) instanceof Reading.Valid valid
                        && valid.value() > ON);
    }
}
