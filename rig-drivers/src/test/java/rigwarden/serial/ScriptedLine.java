package rigwarden.serial;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A line that keeps what was sent and delivers what a test puts in, in pieces of a given size. */
class ScriptedLine implements SerialLine {
    final List<String> sent = new ArrayList<>();
    final Deque<Byte> waiting = new ArrayDeque<>();
    final Map<String, String> answers = new HashMap<>();
    final Deque<String> errors = new ArrayDeque<>();
    int piece = 1000;
    /** End of a text that always arrives upset, so that it is complained of. */
    String upset = "none";
    boolean there = true;
    boolean answering = true;
    int opened;
    double limit;
    String poll = "28.5;10.25;1;0,\"No error\"\n";

    void put(String text) {
        for (byte b : text.getBytes(StandardCharsets.US_ASCII)) {
            waiting.add(b);
        }
    }

    @Override
    public boolean open() {
        opened++;
        return there;
    }

    @Override
    public int write(byte[] bytes, int length) {
        if (!there) {
            return 0;
        }
        String text = new String(bytes, 0, length, StandardCharsets.US_ASCII);
        sent.add(text.strip());
        if (text.strip().endsWith(upset)) {
            errors.add("-102,\"Syntax error\"");
        }
        if (answers.containsKey(text.strip())) {
            put(answers.get(text.strip()) + "\n");
        } else if (answering && text.startsWith("MEAS")) {
            put(poll);
        } else if (answering && text.startsWith("SYST:ERR?")) {
            put((errors.isEmpty() ? "0,\"No error\"" : errors.remove()) + "\n");
        } else if (answering && text.contains(":PROT?")) {
            put(limit + "\n");
        } else if (text.contains(":PROT ")) {
            limit = Double.parseDouble(text.substring(15).strip());
        }
        return length;
    }

    @Override
    public int read(byte[] into) {
        if (!there) {
            return -1;
        }
        int count = 0;
        while (count < piece && count < into.length && !waiting.isEmpty()) {
            into[count++] = waiting.remove();
        }
        return count;
    }

    @Override
    public void close() {
        waiting.clear();
    }
}
