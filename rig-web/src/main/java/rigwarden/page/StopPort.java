package rigwarden.page;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Supplier;
import rigwarden.live.Watched;

/**
 * A second small server for STOP alone, with a thread for each request: it acts while the page's server is drowned in
 * requests, and while others hang on it half said. It serves nothing else than STOP, what became of it, two style sheets and an icon.
 */
final class StopPort implements AutoCloseable {
    private static final String LONGEST_REQUEST_SECONDS = "5";
    private static final String REACH = ".stop-here { display: none } .stop-own { display: block }";

    private final HttpServer server;
    private final ExecutorService threads;
    private final Supplier<Optional<Watched>> run;
    private final Stopping stopping;
    private final int pagePort;

    StopPort(InetAddress address, int port, int pagePort, Supplier<Optional<Watched>> run, Stopping stopping)
            throws IOException {
        this.run = run;
        this.stopping = stopping;
        this.pagePort = pagePort;
        threads = Executors.newVirtualThreadPerTaskExecutor();
        System.setProperty("sun.net.httpserver.maxReqTime", LONGEST_REQUEST_SECONDS);
        server = HttpServer.create(new InetSocketAddress(address, port), 0);
        server.setExecutor(threads);
        server.createContext("/stop", this::stop);
        server.createContext("/page.css", exchange -> asset(exchange, "page.css", Assets.text("page.css")));
        server.createContext("/icon.svg", exchange -> asset(exchange, "icon.svg", Assets.text("icon.svg")));
        server.createContext("/reach.css", exchange -> asset(exchange, "reach.css", REACH));
        server.start();
    }

    int port() {
        return server.getAddress().getPort();
    }

    private void stop(HttpExchange exchange) throws IOException {
        boolean post = exchange.getRequestMethod().equals("POST");
        String host = Reach.hostOf(exchange.getRequestHeaders().getFirst("Host"));
        if (post && !SameSite.allows(name -> exchange.getRequestHeaders().getFirst(name), host)) {
            answer(exchange, 403, "text/plain; charset=utf-8", "STOP from another site's page is refused.");
            return;
        }
        Optional<Watched> watched = run.get();
        String told = post ? stopping.stop(watched) : stopping.told(watched);
        Reach reach = Reach.fromStopPort(host.isEmpty() ? "localhost" : host, pagePort);
        exchange.getResponseHeaders().set("Content-Security-Policy", SameSite.policy(Optional.of(reach.main())));
        answer(exchange, 200, "text/html; charset=utf-8", StoppedPage.of(new Shell(watched, reach), told,
                stopping.open(watched)));
    }

    private static void asset(HttpExchange exchange, String name, String text) throws IOException {
        answer(exchange, 200, Assets.type(name), text);
    }

    private static void answer(HttpExchange exchange, int status, String type, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.getResponseHeaders().set("Cache-Control", "no-store");
        exchange.getResponseHeaders().set("X-Content-Type-Options", "nosniff");
        exchange.sendResponseHeaders(status, bytes.length);
        exchange.getResponseBody().write(bytes);
        exchange.close();
    }

    @Override
    public void close() {
        server.stop(0);
        threads.shutdownNow();
    }
}
