package rigwarden.notice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;

/** A way whose other end a test plays. */
final class TestRoute implements Route {
    final List<String> sent = Collections.synchronizedList(new ArrayList<>());
    volatile Function<Notice, Delivery> end = _ -> new Delivery.Delivered("taken");

    @Override
    public String name() {
        return "phone";
    }

    @Override
    public String where() {
        return "a test";
    }

    @Override
    public boolean takes(What what) {
        return what != What.WARNED;
    }

    @Override
    public Delivery send(Notice notice) {
        sent.add(notice.title());
        return end.apply(notice);
    }

    @Override
    public void close() {
        sent.add("closed");
    }
}
