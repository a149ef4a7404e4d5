package rigwarden.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import rigwarden.calibration.MeterFile;
import rigwarden.calibration.MeterStatement;
import rigwarden.joint.JointOhms;
import rigwarden.live.Snapshot;
import rigwarden.live.Walk;
import rigwarden.live.Watched;
import rigwarden.paper.JointPath;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.Refusal;

/** The area Joints: where the hand meter goes next, what it found, and the same as plain text for {@code rigwarden walk}. */
final class Walking {
    /** Beside the ledger: what the hand meter states, in V. */
    static final String METER = "hand-meter.toml";
    /** What a hand meter of any make keeps on its millivolt range: common practice (no source). */
    private static final MeterStatement USUAL = new MeterStatement("a hand meter, ± (1 % + 3 counts of 0.1 mV)", 0.01, 3, 1e-4, 0, 0.4,
            LocalDate.EPOCH, 365);

    private final Supplier<Optional<Watched>> run;
    private final Shelf shelf;
    private final Path folder;
    private final Function<Context, Shell> shell;
    private final Predicate<Context> operator;
    private Optional<Under> under = Optional.empty();

    /**
     * A walk that is under way.
     *
     * @param stated whether the meter is one that a person described, and not the usual one
     * @param trouble what is amiss with its description
     */
    private record Under(Watched run, Walk walk, boolean stated, String trouble) {
        /** Why no reading of this meter counts today. */
        Optional<String> refused() {
            return stated ? walk.meter().refusedOn(LocalDate.now(ZoneId.systemDefault())) : Optional.empty();
        }

        Optional<Snapshot> now() {
            return run.live().now();
        }
    }

    Walking(Supplier<Optional<Watched>> run, Shelf shelf, Path folder, Function<Context, Shell> shell, Predicate<Context> operator) {
        this.run = run;
        this.shelf = shelf;
        this.folder = folder;
        this.shell = shell;
        this.operator = operator;
    }

    void routes(RoutesConfig routes) {
        routes.get("/joints", ctx -> ctx.html(page(ctx, "")));
        routes.get("/joints.txt", ctx -> plain(ctx, ""));
        routes.post("/joints", ctx -> ctx.html(page(ctx, typed(ctx))));
        routes.post("/joints.txt", ctx -> plain(ctx, typed(ctx)));
    }

    private synchronized Optional<Under> under() {
        Optional<Watched> now = run.get();
        if (now.isPresent() && under.stream().noneMatch(one -> one.run.number() == now.get().number() && one.refused().isEmpty())) {
            under = Optional.of(begun(now.get()));
        }
        return now.isEmpty() ? Optional.empty() : under;
    }

    private Under begun(Watched watched) {
        Path file = folder.resolve(METER);
        MeterStatement meter = USUAL;
        boolean stated = false;
        String trouble = "";
        if (Files.exists(file)) {
            switch (MeterFile.read(file)) {
                case Read.Sound<MeterStatement> sound -> {
                    meter = sound.value();
                    stated = true;
                }
                case Read.Refused<MeterStatement> refused -> trouble = "The usual hand meter is taken instead: "
                        + String.join(" ", refused.refusals().stream().map(Refusal::print).toList());
            }
        }
        return new Under(watched, new Walk(watched.rig(), meter, joint -> shelf.joint(watched.number(), joint)), stated, trouble);
    }

    /** A reading is data and no order; still, only somebody at this machine or signed in may put one into the ledger. */
    private String typed(Context ctx) {
        Optional<Under> now = under();
        if (now.isEmpty()) {
            ctx.status(409);
            return "Nothing runs, so that no current belongs to a reading.";
        }
        if (!here(ctx) && !operator.test(ctx)) {
            ctx.status(403);
            return "Sign in first, or type at the rig's computer.";
        }
        int place = number(ctx.formParam("joint"));
        if (ctx.formParam("pass") != null) {
            now.get().walk.pass(place);
            return "Passed.";
        }
        Optional<String> lapsed = now.get().refused();
        if (lapsed.isPresent()) {
            ctx.status(422);
            return "Nothing is kept: in " + METER + ", " + lapsed.get();
        }
        String text = String.valueOf(ctx.formParam("mv"));
        return switch (now.get().walk.take(place, text.length() > 40 ? text.substring(0, 40) : text, now.get().now(), now.get().run.live().ageSeconds())) {
            case Walk.Answer.Taken taken -> taken.words();
            case Walk.Answer.Refused refused -> {
                ctx.status(422);
                yield refused.words();
            }
        };
    }

    /** Whether a visitor sits at this machine. */
    static boolean here(Context ctx) {
        try {
            return InetAddress.getByName(ctx.ip()).isLoopbackAddress();
        } catch (UnknownHostException _) {
            return false;
        }
    }

    private static int number(String text) {
        return text != null && text.matches("\\d{1,4}") ? Integer.parseInt(text) : 0;
    }

    /** Two headers say which run, and which joint is next (0: none); the body is for a person. */
    private void plain(Context ctx, String said) {
        Optional<Under> now = under();
        Optional<JointPath.Joint> next = now.flatMap(one -> one.walk.next(one.now()));
        ctx.header("Rigwarden-Run", now.map(one -> String.valueOf(one.run.number())).orElse("0"));
        ctx.header("Rigwarden-Joint", next.map(joint -> String.valueOf(joint.place())).orElse("0"));
        String lines = said.isEmpty() ? "" : said + "\n";
        ctx.contentType("text/plain; charset=utf-8").result(lines + now.map(one -> WalkWords.lines(one.walk, next, one.now()))
                .orElse("Nothing runs.\n"));
    }

    private String page(Context ctx, String said) {
        String top = said.isEmpty() ? "" : "<p class=\"note\" id=\"said\">" + Html.text(said) + "</p>";
        return shell.apply(ctx).page(Shell.Area.JOINTS, "Joints", "", "<h1>Joints</h1>" + top + under().map(this::body).orElse(
                "<p>Nothing runs. While a step with current goes on, a hand meter on its millivolts is led from joint to joint here, or with"
                        + " <code>rigwarden walk</code>.</p>"));
    }

    private String body(Under now) {
        Walk walk = now.walk;
        Optional<JointPath.Joint> next = walk.next(now.now());
        StringBuilder choice = new StringBuilder();
        for (JointPath.Joint joint : walk.joints()) {
            boolean here = next.isPresent() && next.get().place() == joint.place();
            choice.append("<option value=\"").append(joint.place()).append('"').append(here ? " selected" : "").append('>')
                    .append(Html.text(joint.place() + " · " + joint.name())).append("</option>");
        }
        StringBuilder rows = new StringBuilder();
        for (JointOhms joint : walk.ranked()) {
            rows.append("<tr><td>").append(Html.text(joint.joint())).append("</td><td>").append(Html.text(Walk.words(joint))).append("</td></tr>");
        }
        List<String> apart = walk.outOfFamily();
        return """
                <p id="next">%s</p>
                <form class="ask" method="post" action="/joints"><label>Joint <select name="joint">%s</select></label>
                <label>mV <input name="mv" inputmode="decimal" maxlength="12" size="8" autocomplete="off"></label>
                <button>Keep</button> <button name="pass" value="yes">Cannot be reached</button></form>
                <p class="small">One tip on the stud or terminal itself, the other on the lug or bar, never on the nut. Insulated tips; one hand.
                Type what stands there now: it is divided by the current of the scan in which it arrives. Meter: %s. %s</p>
                <h2>Found, the highest first</h2><table>%s</table>
                %s""".formatted(Html.text(WalkWords.next(walk, next, now.now())), choice, Html.text(walk.meter().name()), Html.text(now.refused().orElse(now.trouble)), rows,
                apart.isEmpty() ? "" : "<p class=\"bad\" id=\"apart\">" + Html.text(String.join(" ", apart)) + "</p>");
    }
}
