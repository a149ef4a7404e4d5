package rigwarden.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import java.util.function.Predicate;

/** A proof that is being made: what is asked of the person at the rig, and the answer by two buttons. Nothing is energised from here. */
final class Proving {
    private final AtRig rig;
    private final Predicate<Context> operator;

    Proving(AtRig rig, Predicate<Context> operator) {
        this.rig = rig;
        this.operator = operator;
    }

    void routes(RoutesConfig routes) {
        routes.post("/proof", ctx -> {
            Optional<String> refused = answered(ctx);
            refused.ifPresentOrElse(words -> ctx.contentType("text/plain; charset=utf-8").result(words), () -> ctx.redirect("/", HttpStatus.SEE_OTHER));
        });
    }

    /** Why it was not taken; empty when it was. An answer belongs to the words that were shown with it. */
    private Optional<String> answered(Context ctx) {
        if (!may(ctx)) {
            ctx.status(403);
            return Optional.of("Sign in first, or answer at the rig's terminal.");
        }
        Optional<AtRig.Asked> asked = rig.asked();
        String to = String.valueOf(ctx.formParam("to"));
        Optional<AtRig.Ear> ear = asked.filter(now -> now.words().equals(to)).flatMap(AtRig.Asked::answer);
        if (ear.isEmpty()) {
            ctx.status(409);
            return Optional.of("That is no longer asked, or is answered at the rig's terminal only. Go back and read what is asked now.");
        }
        switch (String.valueOf(ctx.formParam("said"))) {
            case "yes" -> ear.get().hear(true);
            case "no" -> ear.get().hear(false);
            case String _ -> {
                ctx.status(422);
                return Optional.of("Answer with one of the two buttons.");
            }
        }
        return Optional.empty();
    }

    private boolean may(Context ctx) {
        return Walking.here(ctx) || operator.test(ctx);
    }

    /** The area Now while a proof is made and nothing runs; empty when none is. */
    Optional<String> page(Shell shell, Context ctx) {
        return rig.asked().map(asked -> shell.page(Shell.Area.NOW, "Proof", "<meta http-equiv=\"refresh\" content=\"2\">", """
                <h1>A proof is made</h1>
                <p class="note">%s</p>
                %s
                <p class="small">This page reads it anew every two seconds. Nothing is energised before somebody at the rig's own terminal asks for it.</p>
                """.formatted(Html.text(asked.words()), form(asked, ctx))));
    }

    private String form(AtRig.Asked asked, Context ctx) {
        if (asked.answer().isEmpty()) {
            return "";
        }
        if (!may(ctx)) {
            return "<p>Answer at the rig's terminal, or <a href=\"/sign-in\">sign in</a> to answer here.</p>";
        }
        return """
                <form class="ask" method="post" action="/proof"><input type="hidden" name="to" value="%s">
                <button name="said" value="yes">It is done, or so</button>
                <button name="said" value="no">Leave it out, or not so</button></form>
                """.formatted(Html.text(asked.words()));
    }
}
