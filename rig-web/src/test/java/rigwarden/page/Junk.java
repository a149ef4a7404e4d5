package rigwarden.page;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Requests that nobody needs: many connections, each with many questions on it, and no answer is ever read. */
final class Junk implements AutoCloseable {
    private static final int EACH = 50;

    private final int port;
    private final List<Socket> sockets = new ArrayList<>();

    /** Nothing is queued yet. */
    Junk(int port) {
        this.port = port;
    }

    /** Queues so many requests at the port. */
    void queue(int requests) throws IOException {
        byte[] many = question("/trace?buckets=1000").repeat(EACH).getBytes(StandardCharsets.US_ASCII);
        for (int sent = 0; sent < requests; sent += EACH) {
            Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
            sockets.add(socket);
            OutputStream out = socket.getOutputStream();
            out.write(many);
            out.flush();
        }
    }

    /** Hangs so many connections on the port, each in the middle of a sentence. */
    void hang(int connections) throws IOException {
        for (int i = 0; i < connections; i++) {
            Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
            sockets.add(socket);
            socket.getOutputStream().write("POST /stop HTTP/1.1\r\nHost: 127".getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().flush();
        }
    }

    private String question(String path) {
        return "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\n\r\n";
    }

    /** Whether the port still answers somebody new within this time. */
    boolean answers(int millis) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(millis);
            socket.getOutputStream().write(question("/runs").getBytes(StandardCharsets.US_ASCII));
            return socket.getInputStream().read() >= 0;
        } catch (SocketTimeoutException _) {
            return false;
        }
    }

    @Override
    public void close() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
    }
}
