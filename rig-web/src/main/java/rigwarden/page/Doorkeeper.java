package rigwarden.page;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.Optional;
import java.util.Set;

/** Looks at each request before anything else does: size, host, origin; and gives each answer its policy. */
final class Doorkeeper {
    static final int MOST_BYTES = 65_536;

    private final Set<String> names;
    private final int stopPort;

    /**
     * A doorkeeper.
     *
     * @param names host names besides addresses and localhost under which the page may be asked for
     */
    Doorkeeper(Set<String> names, int stopPort) {
        this.names = Set.copyOf(names);
        this.stopPort = stopPort;
    }

    /** How this visitor reaches the page. */
    Reach reach(Context ctx) {
        return Reach.here(Reach.hostOf(ctx.host()), stopPort);
    }

    void look(Context ctx) {
        ctx.header("Content-Security-Policy", SameSite.policy(reach(ctx).stop()));
        ctx.header("X-Content-Type-Options", "nosniff");
        ctx.header("Referrer-Policy", "strict-origin-when-cross-origin");
        ctx.header("Cache-Control", "no-store");
        boolean stop = ctx.path().equals("/stop");
        Optional<Refusal> refusal = size(ctx).or(() -> stop ? stopFrom(ctx) : from(ctx));
        refusal.ifPresent(r -> {
            ctx.status(r.status()).header("Connection", "close").result(r.words()).contentType("text/plain; charset=utf-8");
            ctx.skipRemainingHandlers();
        });
    }

    private record Refusal(int status, String words) {}

    private static Optional<Refusal> size(Context ctx) {
        if (ctx.req().getContentLengthLong() > MOST_BYTES) {
            return Optional.of(new Refusal(413, "A request may have 64 kB."));
        }
        boolean unsaid = ctx.header("Transfer-Encoding") != null;
        return unsaid ? Optional.of(new Refusal(411, "Say how long the request is.")) : Optional.empty();
    }

    private static Optional<Refusal> stopFrom(Context ctx) {
        return ctx.method() == HandlerType.POST && !SameSite.allows(ctx::header, Reach.hostOf(ctx.host()))
                ? Optional.of(new Refusal(403, "STOP from another site's page is refused."))
                : Optional.empty();
    }

    private Optional<Refusal> from(Context ctx) {
        String host = Reach.hostOf(ctx.host());
        if (!known(host)) {
            return Optional.of(new Refusal(421, "This page is not served under that name; name it with --name."));
        }
        boolean reads = ctx.method() == HandlerType.GET || ctx.method() == HandlerType.HEAD;
        return reads || SameSite.insists(ctx::header, ctx.host())
                ? Optional.empty()
                : Optional.of(new Refusal(403, "Only this page itself may ask for that."));
    }

    /** An address, this machine, or a name that was given: a name of somebody else's that leads here is not ours. */
    private boolean known(String host) {
        return host.matches("\\d{1,3}(\\.\\d{1,3}){3}") || host.startsWith("[") || host.equals("localhost")
                || names.contains(host);
    }
}
