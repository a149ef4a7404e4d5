package rigwarden.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.http.sse.SseClient;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * One live viewer: a queue of two looks, of which the older is dropped, and a thread of its own that writes what is new to
 * this one. A viewer that takes nothing for too long is closed.
 */
final class Viewer {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int QUEUE = 2;
    private static final long HEARTBEAT_SECONDS = 2;
    private static final int DROPPED_IN_A_ROW = 20;

    private final SseClient client;
    private final BlockingQueue<View> queue = new ArrayBlockingQueue<>(QUEUE);
    private final Thread thread;
    private View sent = View.NOTHING;
    private int dropped;
    private volatile boolean ended;

    Viewer(SseClient client, Runnable gone) {
        this.client = client;
        thread = Thread.ofVirtual().name("viewer").unstarted(() -> {
            try {
                serve();
            } finally {
                leaves();
                client.close();
                gone.run();
            }
        });
    }

    void start() {
        thread.start();
    }

    /** Hands over a look; never waits. Broadcaster only. */
    void offer(View view) {
        while (!queue.offer(view)) {
            queue.poll();
            dropped++;
            if (dropped >= DROPPED_IN_A_ROW) {
                end();
                return;
            }
        }
        if (queue.size() == 1) {
            dropped = 0;
        }
    }

    /** Ends this viewer, whatever its thread is waiting for. */
    void end() {
        ended = true;
        if (!Thread.currentThread().equals(thread)) {
            thread.interrupt();
        }
    }

    /** An interrupted thread could not close its connection in peace. */
    private void leaves() {
        ended |= Thread.interrupted();
    }

    private void serve() {
        try {
            client.ctx().res().getOutputStream().write("retry: 1500\n\n".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
            while (!ended && !client.terminated()) {
                View view = queue.poll(HEARTBEAT_SECONDS, TimeUnit.SECONDS);
                if (view == null) {
                    client.sendEvent("here", "-");
                } else {
                    send(view);
                }
            }
        } catch (IOException _) {
            ended = true;
        } catch (InterruptedException _) {
            Thread.currentThread().interrupt();
        }
    }

    private void send(View view) throws JsonProcessingException {
        View fresh = view.since(sent);
        sent = view;
        client.sendEvent("now", JSON.writeValueAsString(
                Map.of("words", fresh.words(), "marks", fresh.marks(), "parts", fresh.parts())),
                Long.toString(view.number()));
    }
}
