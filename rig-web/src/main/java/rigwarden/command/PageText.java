package rigwarden.command;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Optional;

/** One text of the page of a run's process, as a terminal asks for it. */
final class PageText implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    private final URI page;
    private final String path;
    private final HttpClient client = HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    private Optional<HttpResponse<String>> last = Optional.empty();

    PageText(URI page, String path) {
        this.page = page;
        this.path = path;
    }

    /** Whether a page of ours answers. */
    boolean there() {
        try {
            look();
            return last.stream().anyMatch(answer -> answer.headers().firstValue("Rigwarden-Run").isPresent());
        } catch (IOException _) {
            return false;
        }
    }

    void look() throws IOException {
        send(HttpRequest.newBuilder(page.resolve(path)).GET());
    }

    void post(String form) throws IOException {
        send(HttpRequest.newBuilder(page.resolve(path)).header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", page.toString()).POST(HttpRequest.BodyPublishers.ofString(form)));
    }

    private void send(HttpRequest.Builder request) throws IOException {
        try {
            last = Optional.of(client.send(request.timeout(PATIENCE).build(), HttpResponse.BodyHandlers.ofString()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
    }

    /** Number of the run that it shows; 0 for none. */
    int run() {
        return header("Rigwarden-Run");
    }

    /** What the page says, for a person. */
    String words() {
        return last.map(HttpResponse::body).orElse("");
    }

    /** Whether the page did what was asked. */
    boolean done() {
        return last.stream().anyMatch(answer -> answer.statusCode() < 400);
    }

    /** A number in a header of the last answer; 0 where there is none. */
    int header(String name) {
        return last.flatMap(answer -> answer.headers().firstValue(name)).filter(text -> text.matches("\\d{1,9}")).map(Integer::parseInt).orElse(0);
    }

    @Override
    public void close() {
        client.close();
    }
}
