package rigwarden.notice;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** A notice as one POST. A redirection is not followed: it could lead the token elsewhere. */
final class WebHook implements Route {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Duration CONNECT = Duration.ofSeconds(10);
    private static final int TOO_MANY = 429;
    private static final int TIMED_OUT = 408;

    /** What is posted. */
    enum Form { JSON, TEXT }

    private final String name;
    private final URI url;
    private final Form form;
    private final Secret token;
    private final Set<What> takes;
    private final Duration patience;
    private volatile Optional<HttpClient> client = Optional.empty();

    /**
     * A hook that nothing was sent to.
     *
     * @param token sent as a bearer token, if there is one
     * @param patience longest time for one attempt
     */
    WebHook(String name, URI url, Form form, Secret token, Set<What> takes, Duration patience) {
        this.name = name;
        this.url = url;
        this.form = form;
        this.token = token;
        this.takes = Set.copyOf(takes);
        this.patience = patience;
    }

    /** Made with the first notice: it has a thread of its own. */
    private HttpClient client() {
        if (client.isEmpty()) {
            client = Optional.of(HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).connectTimeout(CONNECT)
                    .followRedirects(HttpClient.Redirect.NEVER).build());
        }
        return client.orElseThrow();
    }

    @Override
    public String name() {
        return name;
    }

    /** Host only: the path of a hook is often its secret. */
    @Override
    public String where() {
        return "web hook at " + url.getScheme() + "://" + url.getAuthority();
    }

    @Override
    public boolean takes(What what) {
        return takes.contains(what);
    }

    @Override
    public Delivery send(Notice notice) {
        CompletableFuture<HttpResponse<Void>> answer = null;
        try {
            answer = client().sendAsync(request(notice), HttpResponse.BodyHandlers.discarding());
            return judged(answer.get(patience.toNanos(), TimeUnit.NANOSECONDS).statusCode());
        } catch (Secret.Missing e) {
            return new Delivery.Failed(String.valueOf(e.getMessage()), false);
        } catch (TimeoutException _) {
            answer.cancel(true);
            return new Delivery.Failed("no answer in " + patience.toSeconds() + " s", false);
        } catch (InterruptedException _) {
            answer.cancel(true);
            Thread.currentThread().interrupt();
            return new Delivery.Failed("given up at the end", false);
        } catch (ExecutionException e) {
            return new Delivery.Failed(Reason.of(e.getCause()), false);
        }
    }

    private HttpRequest request(Notice notice) throws Secret.Missing {
        String type = form == Form.JSON ? "application/json" : "text/plain; charset=utf-8";
        HttpRequest.Builder request = HttpRequest.newBuilder(url).timeout(patience).header("Content-Type", type)
                .header("User-Agent", "rigwarden").POST(HttpRequest.BodyPublishers.ofString(body(notice)));
        String secret = token.read();
        if (!secret.isEmpty()) {
            request.header("Authorization", "Bearer " + secret);
        }
        return request.build();
    }

    private static Delivery judged(int status) {
        boolean later = status >= 500 || status == TOO_MANY || status == TIMED_OUT;
        return status >= 200 && status < 300
                ? new Delivery.Delivered("answered " + status)
                : new Delivery.Failed("answered " + status, !later);
    }

    private String body(Notice notice) {
        if (form == Form.TEXT) {
            return notice.text();
        }
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("id", notice.id().toString());
        fields.put("what", notice.what().word());
        fields.put("title", notice.title());
        fields.put("words", notice.words());
        fields.put("run", notice.run());
        fields.put("rehearsal", notice.rehearsal());
        fields.put("next_check_in_min", notice.nextMinutes());
        fields.put("at", notice.at().toString());
        try {
            return JSON.writeValueAsString(fields);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a notice cannot be written as JSON", e);
        }
    }

    @Override
    public void close() {
        client.ifPresent(HttpClient::shutdownNow);
    }
}
