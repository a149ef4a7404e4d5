package rigwarden.command;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;

/** The page of a run's process, as far as a walk needs it. */
final class WalkedPage implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    private final URI page;
    private final HttpClient client = HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    private Optional<HttpResponse<String>> last = Optional.empty();

    WalkedPage(URI page) {
        this.page = page;
    }

    /** Whether a page of ours answers. */
    boolean there() {
        try {
            send(HttpRequest.newBuilder(page.resolve("/joints.txt")).GET());
            return last.stream().anyMatch(answer -> answer.headers().firstValue("Rigwarden-Run").isPresent());
        } catch (IOException _) {
            return false;
        }
    }

    int run() {
        return header("Rigwarden-Run");
    }

    /** Place of the joint that is next; 0 when all have been. */
    int joint() {
        return header("Rigwarden-Joint");
    }

    /** What the page says, for a person. */
    String words() {
        return last.map(HttpResponse::body).orElse("");
    }

    void look() throws IOException {
        send(HttpRequest.newBuilder(page.resolve("/joints.txt")).GET());
    }

    void type(int joint, String millivolts) throws IOException {
        post("joint=" + joint + "&mv=" + URLEncoder.encode(millivolts, StandardCharsets.UTF_8));
    }

    void pass(int joint) throws IOException {
        post("joint=" + joint + "&pass=yes");
    }

    private void post(String form) throws IOException {
        send(HttpRequest.newBuilder(page.resolve("/joints.txt")).header("Content-Type", "application/x-www-form-urlencoded")
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

    private int header(String name) {
        return last.flatMap(answer -> answer.headers().firstValue(name)).filter(text -> text.matches("\\d{1,9}")).map(Integer::parseInt).orElse(0);
    }

    @Override
    public void close() {
        client.close();
    }
}
