package rigwarden.page;

import java.util.Optional;
import rigwarden.live.Watched;
import rigwarden.paper.Spots;

/** The frame of every view: STOP in its place, the areas, and whether this is a rehearsal. */
final class Shell {
    /** Where a view belongs. */
    enum Area {
        NOW("Now", "/"),
        RUNS("Runs", "/runs"),
        JOINTS("Joints", "/joints");

        private final String word;
        private final String path;

        Area(String word, String path) {
            this.word = word;
            this.path = path;
        }
    }

    private final Optional<Watched> run;
    private final Reach reach;

    Shell(Optional<Watched> run, Reach reach) {
        this.run = run;
        this.reach = reach;
    }

    /** A whole document. */
    String page(Area area, String title, String head, String main) {
        StringBuilder nav = new StringBuilder();
        for (Area one : Area.values()) {
            String here = one == area ? " aria-current=\"page\"" : "";
            nav.append("<a href=\"").append(reach.main()).append(one.path).append('"').append(here).append('>')
                    .append(one.word).append("</a>");
        }
        return """
                <!doctype html>
                <html lang="en"><head><meta charset="utf-8">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <title>%s · Rigwarden</title>
                <link rel="icon" href="/icon.svg"><link rel="stylesheet" href="/page.css">%s
                </head><body%s>
                %s<header><nav>%s</nav><p class="who">%s</p></header>
                <main>%s</main>
                %s
                </body></html>
                """.formatted(Html.text(title), head, rehearsal() ? " class=\"rehearsal\"" : "", band(), nav,
                run.map(r -> Html.text(r.program().name() + " on " + r.rig().name())).orElse("nothing runs"), main,
                stop());
    }

    private boolean rehearsal() {
        return run.isPresent() && run.get().rehearsal();
    }

    private String band() {
        if (!rehearsal()) {
            return "";
        }
        double speed = run.orElseThrow().speed();
        String pace = speed == 1 ? "" : Spots.say(" · %.0f × the clock", speed);
        return "<p class=\"band\">REHEARSAL<span> · emulated" + pace + "</span></p>\n";
    }

    /**
     * Two forms in one place: the one to STOP's own port is shown as soon as that port's style sheet says that it can be
     * reached from here; until then, and where it cannot, the other one is.
     */
    private String stop() {
        String own = reach.stop().map(port -> """
                <form class="stop stop-own" method="post" action="%s/stop"><button id="stop-own">STOP</button></form>
                <link rel="stylesheet" href="%s/reach.css">""".formatted(port, port)).orElse("");
        return """
                <div class="stop-place"><form class="stop stop-here" method="post" action="/stop">\
                <button id="stop-here">STOP</button></form>%s\
                <p>Anyone may press it: everything off in one scan.</p></div>""".formatted(own);
    }
}
