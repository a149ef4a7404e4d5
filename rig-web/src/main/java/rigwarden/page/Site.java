package rigwarden.page;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import rigwarden.live.Snapshot;
import rigwarden.live.Watched;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunReader;
import rigwarden.paper.CsvExport;
import rigwarden.paper.Spots;

/** The page's server and STOP's. */
public final class Site implements AutoCloseable {
    private static final int THREADS = 24;
    private static final int LEAST_THREADS = 4;
    private static final long IDLE_MILLIS = 10_000;
    /** So much may lie unread on the way to a viewer; one who never reads blocks his own thread soon, and is closed. */
    private static final int SEND_BYTES = 32_768;
    private static final int EXPORTS = 2;
    private static final long SO_FAR_NANOS = 2_000_000_000L;
    private static final int MOST_BUCKETS = 1000;
    private static final int USUAL_BUCKETS = 500;

    private final Supplier<Optional<Watched>> run;
    private final Shelf shelf;
    private final Stopping stopping = new Stopping();
    private final Semaphore exports = new Semaphore(EXPORTS);
    private final Semaphore looks = new Semaphore(EXPORTS);
    private final MorningShelf mornings = new MorningShelf();
    private final StopPort stopPort;
    private final Doorkeeper door;
    private final Asking asking;
    private final Walking walking;
    private final Spotting spotting;
    private final Proving proving;
    private final Viewers viewers;
    private final Javalin server;
    private View last = View.NOTHING;
    private String soFar = "";
    private long soFarNanos;
    private int soFarBuckets;
    private int soFarRun = -1;

    /**
     * Where the page is served.
     *
     * @param address to listen on; loopback unless somebody decided otherwise
     * @param port of the page; STOP's own is the next; 0 takes any two
     * @param names host names besides addresses under which it may be asked for
     */
    public record Place(InetAddress address, int port, Set<String> names) {}

    /** Starts serving; the operator's passphrase lies in this folder. */
    public Site(Place place, Supplier<Optional<Watched>> run, Shelf shelf, Path folder)
            throws IOException {
        this(place, run, shelf, folder, AtRig.nobody());
    }

    /** The same, and on Now stands what a person at the rig is asked for. */
    public Site(Place place, Supplier<Optional<Watched>> run, Shelf shelf, Path folder, AtRig rig) throws IOException {
        this.run = run;
        asking = new Asking(folder, run, this::shell);
        this.shelf = shelf;
        walking = new Walking(run, shelf, folder, this::shell, asking::operator);
        spotting = new Spotting(run, asking::operator);
        proving = new Proving(rig, asking::operator);
        viewers = new Viewers(this::view);
        int[] ports = Ports.pair(place);
        door = new Doorkeeper(place.names(), ports[1]);
        stopPort = new StopPort(place.address(), ports[1], ports[0], run, stopping);
        server = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.startup.showOldJavalinVersionWarning = false;
            config.startup.startupWatcherEnabled = false;
            config.http.maxRequestSize = Doorkeeper.MOST_BYTES;
            config.jetty.threadPool = threads();
            config.jetty.modifyHttpConfiguration(http -> http.setSendServerVersion(false));
            config.jetty.modifyServer(jetty -> jetty.setStopTimeout(0));
            routes(config);
        });
        server.start(place.address().getHostAddress(), ports[0]);
        for (var connector : server.jettyServer().server().getConnectors()) {
            if (connector instanceof ServerConnector http) {
                http.setIdleTimeout(IDLE_MILLIS);
                http.setAcceptedSendBufferSize(SEND_BYTES);
            }
        }
    }

    private static QueuedThreadPool threads() {
        QueuedThreadPool pool = new QueuedThreadPool(THREADS, LEAST_THREADS);
        pool.setName("page");
        pool.setDaemon(true);
        return pool;
    }

    private void routes(JavalinConfig config) {
        config.routes.before(door::look);
        config.routes.post("/stop", ctx -> stopped(ctx, stopping.stop(run.get())));
        config.routes.get("/stop", ctx -> stopped(ctx, stopping.told(run.get())));
        asking.routes(config.routes);
        walking.routes(config.routes);
        spotting.routes(config.routes);
        proving.routes(config.routes);
        config.routes.get("/", this::now);
        config.routes.before("/live", ctx -> {
            if (viewers.full()) {
                ctx.status(503).result("Sixteen are watching already.").skipRemainingHandlers();
            }
        });
        config.routes.sse("/live", viewers::join);
        config.routes.get("/trace", this::trace);
        config.routes.get("/runs", ctx -> ctx.html(one(() -> RunsPage.list(shell(ctx), shelf.runs(), run.get()))));
        config.routes.get("/runs/{run}.csv", this::export);
        config.routes.get("/runs/{run}/trace", ctx -> stored(ctx).ifPresent(r -> storedTrace(ctx, r)));
        config.routes.get("/runs/{run}", ctx -> stored(ctx).ifPresent(r -> one(ctx, r)));
        for (String name : Assets.names()) {
            config.routes.get("/" + name, ctx ->
                    ctx.header("Cache-Control", "max-age=3600").contentType(Assets.type(name)).result(Assets.text(name)));
        }
        config.routes.exception(LogbookException.class, (e, ctx) ->
                ctx.status(500).contentType("text/plain; charset=utf-8").result(String.valueOf(e.getMessage())));
        config.routes.exception(Exception.class, Site::failed);
    }

    /**
     * Never throws: when a connection is gone, Javalin 7.2.3 hands whatever its answer to an exception throws to the same
     * answer again, without end, and a viewer that left would take a whole core with it.
     */
    private static void failed(Exception thrown, Context ctx) {
        try {
            boolean meant = thrown instanceof HttpResponseException;
            ctx.status(meant ? ((HttpResponseException) thrown).getStatus() : 500)
                    .contentType("text/plain; charset=utf-8")
                    .result(meant ? String.valueOf(thrown.getMessage()) : "This page has a defect. The run does not notice.");
        } catch (RuntimeException _) {
            return;
        }
    }

    private Shell shell(Context ctx) {
        return new Shell(run.get(), door.reach(ctx));
    }

    private void stopped(Context ctx, String told) {
        ctx.html(StoppedPage.of(shell(ctx), told, stopping.open(run.get())));
    }

    private void now(Context ctx) {
        Optional<Watched> now = run.get();
        Optional<String> proof = now.isEmpty() ? proving.page(shell(ctx), ctx) : Optional.empty();
        ctx.html(proof.orElseGet(() -> NowPage.of(shell(ctx), now, view(), viewers.full(), asking.forms(ctx), spotting.open(ctx))));
    }

    /** The newest look in words, made once for all who ask. */
    private synchronized View view() {
        Optional<Watched> watched = run.get();
        Optional<Snapshot> now = watched.flatMap(r -> r.live().now());
        if (now.isEmpty()) {
            return View.NOTHING;
        }
        Snapshot snapshot = now.orElseThrow();
        if (last.number() != snapshot.scan().number() || snapshot.over()) {
            last = Words.of(watched.orElseThrow(), snapshot);
        }
        return last;
    }

    private void trace(Context ctx) {
        Optional<Watched> watched = run.get();
        if (watched.isEmpty()) {
            ctx.status(404).result("Nothing runs.");
            return;
        }
        Watched now = watched.orElseThrow();
        double from = number(ctx, "from", 0);
        double to = number(ctx, "to", 1e8);
        int buckets = buckets(ctx);
        boolean finer = ctx.queryParam("from") != null && (to - from) / buckets < now.live().history().widthSeconds();
        if (finer) {
            read(ctx, () -> StoredTrace.json(now.file(), from, to, buckets));
        } else {
            json(ctx, soFar(now, buckets));
        }
    }

    /** The whole run so far, made once for all who ask within two seconds: it takes megabytes to make. */
    private synchronized String soFar(Watched now, int buckets) {
        boolean old = System.nanoTime() - soFarNanos > SO_FAR_NANOS;
        if (old || soFarBuckets != buckets || soFarRun != now.number()) {
            soFar = TraceJson.of(now.live().history().trace(buckets));
            soFarNanos = System.nanoTime();
            soFarBuckets = buckets;
            soFarRun = now.number();
        }
        return soFar;
    }

    /** What reads the ledger or a run file is made for one visitor after the other: the run has no memory to spare for all at once. */
    private synchronized String one(Supplier<String> work) {
        return work.get();
    }

    private void storedTrace(Context ctx, LedgerRun one) {
        double from = number(ctx, "from", 0);
        double to = number(ctx, "to", 1e8);
        read(ctx, () -> StoredTrace.json(shelf.file(one.number()), from, to, buckets(ctx)));
    }

    /** Two at a time read run files for charts; the others are told to come again. */
    private void read(Context ctx, Supplier<String> work) {
        if (!looks.tryAcquire()) {
            ctx.status(503).header("Retry-After", "2").result("Others are reading; come again.");
            return;
        }
        try {
            json(ctx, work.get());
        } finally {
            looks.release();
        }
    }

    private static void json(Context ctx, String text) {
        ctx.contentType("application/json").result(text);
    }

    private static int buckets(Context ctx) {
        return (int) Math.clamp(number(ctx, "buckets", USUAL_BUCKETS), 10, MOST_BUCKETS);
    }

    private static double number(Context ctx, String name, double otherwise) {
        String text = ctx.queryParam(name);
        return text == null || !text.matches("\\d{1,9}(\\.\\d{1,9})?") ? otherwise : Double.parseDouble(text);
    }

    private Optional<LedgerRun> stored(Context ctx) {
        String number = ctx.pathParam("run");
        Optional<LedgerRun> found = number.matches("\\d{1,9}") ? shelf.run(Integer.parseInt(number)) : Optional.empty();
        if (found.isEmpty()) {
            ctx.status(404).contentType("text/plain; charset=utf-8").result("There is no such run.");
        }
        return found;
    }

    private void one(Context ctx, LedgerRun found) {
        ctx.html(one(() -> {
            try (RunReader reader = RunReader.open(shelf.file(found.number()))) {
                return RunsPage.one(shell(ctx), found, reader, mornings.of(found, shelf.file(found.number())));
            }
        }));
    }

    private void export(Context ctx) throws IOException {
        Optional<LedgerRun> found = stored(ctx);
        if (found.isEmpty()) {
            return;
        }
        int number = found.orElseThrow().number();
        if (found.orElseThrow().outcome() == Outcome.RUNNING) {
            ctx.status(409).result("This run is still written; export it when it is over.");
        } else if (!exports.tryAcquire()) {
            ctx.status(503).header("Retry-After", "30").result("Two exports are under way; come again.");
        } else {
            try (RunReader reader = RunReader.open(shelf.file(number))) {
                ctx.contentType("text/csv; charset=utf-8").header("Content-Disposition",
                        Spots.say("attachment; filename=\"run-%04d.csv\"", number));
                CsvExport.write(reader, new BufferedWriter(
                        new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8), 1 << 16));
            } finally {
                exports.release();
            }
        }
    }

    public int port() {
        return server.port();
    }

    public int stopPort() {
        return stopPort.port();
    }

    /** Live viewers now. */
    public int viewers() {
        return viewers.count();
    }

    /** Ends every live view; browsers come back by themselves. */
    void dropViewers() {
        viewers.drop();
    }

    @Override
    public void close() {
        viewers.close();
        mornings.close();
        server.stop();
        stopPort.close();
    }
}
