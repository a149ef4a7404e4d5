package rigwarden.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import rigwarden.live.Laying;
import rigwarden.live.Snapshot;
import rigwarden.live.Watched;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;

/** Takes where the loose probe lies: a tap on the drawing, a form without script, and plain text for {@code rigwarden spot}. */
final class Spotting {
    private static final int LONGEST = 60;

    private final Supplier<Optional<Watched>> run;
    private final Predicate<Context> operator;

    Spotting(Supplier<Optional<Watched>> run, Predicate<Context> operator) {
        this.run = run;
        this.operator = operator;
    }

    void routes(RoutesConfig routes) {
        routes.get("/spot.txt", ctx -> plain(ctx, ""));
        routes.post("/spot.txt", ctx -> plain(ctx, told(ctx)));
        routes.post("/spot", ctx -> {
            String said = told(ctx);
            if (ctx.statusCode() < 400) {
                ctx.redirect("/#bench", HttpStatus.SEE_OTHER);
            } else {
                ctx.contentType("text/plain; charset=utf-8").result(said);
            }
        });
    }

    /** Whether this visitor may say it, and there is something to be said. */
    boolean open(Context ctx) {
        return run.get().filter(Spotting::carries).isPresent() && (Walking.here(ctx) || operator.test(ctx));
    }

    private static boolean carries(Watched watched) {
        return watched.laying().isPresent() && !watched.rig().channels(Role.LOOSE).isEmpty();
    }

    private String told(Context ctx) {
        Optional<Watched> now = run.get();
        Optional<Snapshot> newest = now.flatMap(watched -> watched.live().now());
        if (newest.isEmpty() || newest.get().over()) {
            return refused(ctx, 409, "Nothing runs, so that no reading belongs to a spot.");
        }
        if (!carries(now.orElseThrow())) {
            return refused(ctx, 409, "This rig has no loose probe: none of its probes has place = \"loose\".");
        }
        if (!Walking.here(ctx) && !operator.test(ctx)) {
            return refused(ctx, 403, "Sign in first, or say it at the rig's computer.");
        }
        Rig rig = now.get().rig();
        String typed = String.valueOf(ctx.formParam("spot"));
        Optional<Spot> spot = Spot.named(rig, typed.length() > LONGEST ? typed.substring(0, LONGEST) : typed);
        if (spot.isEmpty()) {
            return refused(ctx, 422, "There is no spot \"" + typed.strip() + "\". There are: " + names(rig) + ".");
        }
        Laying laying = now.get().laying().orElseThrow();
        return laying.lay(spot.get(), newest.get().scan())
                ? "Kept: it lies on " + spot.get().name() + "."
                : refused(ctx, 503, "Too much waits to be written; say it again.");
    }

    private static String refused(Context ctx, int status, String words) {
        ctx.status(status);
        return words;
    }

    private static String names(Rig rig) {
        return String.join(" · ", Spot.of(rig).stream().map(Spot::name).toList());
    }

    /** A header says which run (0: none); the body is for a person. */
    private void plain(Context ctx, String said) {
        Optional<Watched> now = run.get();
        ctx.header("Rigwarden-Run", now.map(one -> String.valueOf(one.number())).orElse("0"));
        String lies = now.filter(Spotting::carries)
                .map(one -> "The loose probe: " + LooseWords.of(one, one.live().now()) + ".\n").orElse("");
        String all = said.isEmpty() && !lies.isEmpty() ? "Spots: " + names(now.orElseThrow().rig()) + ".\n" : "";
        ctx.contentType("text/plain; charset=utf-8").result((said.isEmpty() ? "" : said + "\n") + lies + all
                + (lies.isEmpty() && said.isEmpty() ? "No run with a loose probe goes on.\n" : ""));
    }
}
