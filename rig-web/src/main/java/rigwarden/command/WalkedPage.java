package rigwarden.command;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** The page of a run's process, as far as a walk needs it. */
final class WalkedPage implements AutoCloseable {
    private final PageText text;

    WalkedPage(URI page) {
        text = new PageText(page, "/joints.txt");
    }

    /** Whether a page of ours answers. */
    boolean there() {
        return text.there();
    }

    int run() {
        return text.run();
    }

    /** Place of the joint that is next; 0 when all have been. */
    int joint() {
        return text.header("Rigwarden-Joint");
    }

    /** What the page says, for a person. */
    String words() {
        return text.words();
    }

    void look() throws IOException {
        text.look();
    }

    void type(int joint, String millivolts) throws IOException {
        text.post("joint=" + joint + "&mv=" + URLEncoder.encode(millivolts, StandardCharsets.UTF_8));
    }

    void pass(int joint) throws IOException {
        text.post("joint=" + joint + "&pass=yes");
    }

    @Override
    public void close() {
        text.close();
    }
}
