package rigwarden.page;

import java.util.Optional;
import rigwarden.live.Watched;
import rigwarden.paper.Spots;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;

/** The area Now. Without script it is a page that reloads itself. */
final class NowPage {
    private static final String SCRIPTS = """
            <link rel="stylesheet" href="/uplot.css">
            <script src="/uplot.js" defer></script>
            <script type="module" src="/now.js"></script>
            <noscript><meta http-equiv="refresh" content="3"></noscript>""";
    private static final String FULL = "<meta http-equiv=\"refresh\" content=\"5\">";

    private static final double OLD_SECONDS = 5;

    private NowPage() {}

    /** Now, with what the operator may ask for; {@code full} when no more live viewers are taken; whether this visitor {@code lays} the loose probe. */
    static String of(Shell shell, Optional<Watched> run, View view, boolean full, String asks, boolean lays) {
        if (run.isEmpty()) {
            return shell.page(Shell.Area.NOW, "Now", "", """
                    <h1>Nothing runs</h1>
                    <p>Start a run at the rig with <code>rigwarden run</code>, or try one that touches nothing with
                    <code>rigwarden rehearse --speed 60</code>. What was run before stands under <a href="/runs">Runs</a>.</p>
                    """);
        }
        String note = full
                ? "<p class=\"note\">Sixteen people are watching live; this view reloads itself every five seconds.</p>"
                : "";
        return shell.page(Shell.Area.NOW, "Now", full ? FULL : SCRIPTS, note + body(run.orElseThrow(), view, asks, lays));
    }

    private static String body(Watched run, View view, String asks, boolean lays) {
        return """
                <section id="told" data-mark="%s">
                %s
                <p class="small">%s %s <span id="link"%s</span></p>
                <div class="trip"><h2>Why</h2>%s%s</div>
                %s
                </section>
                <section><h2>The night</h2><div id="strip">%s</div>
                <p class="key"><span><i class="charge"></i>charge</span> <span><i class="rest"></i>rest</span>
                <span><i class="discharge"></i>discharge</span> <span><i class="heat-run"></i>heat run</span>
                <span><i class="park"></i>park</span> <span><i class="other"></i>else</span></p>
                <details><summary>The steps in words</summary><ul id="steps" class="small">%s</ul></details></section>
                <section id="bench"><h2>On the bench</h2>%s%s
                <p class="small">°C where the probes sit. Under a cell's volts: their change in the last minute. ↑ warms by 0.2 K a minute or
                more, ↑↑ by 1 K.</p>
                </section>
                <section id="charts" data-src="/trace"><h2>So far</h2>
                <p class="small">Each point keeps the lowest and the highest reading of its span. Drag to look closer, double-click
                to see all.</p>
                <div class="chart" id="chart-cells"></div><div class="chart" id="chart-current"></div>
                <div class="chart" id="chart-warmth"></div></section>
                <p class="small">%s</p>
                """.formatted(Html.text(view.mark("told")), Html.live("h1", "headline", view.word("headline")),
                "Since the start: " + Html.live("b", "elapsed", view.word("elapsed")) + ".",
                Html.live("span", "whole", view.word("whole")), age(run, view), Html.live("p", "trip", view.word("trip")),
                Html.live("p", "also", view.word("also")), answers(view) + asks, view.part("strip"), view.part("steps"),
                PackDrawing.draw(run.rig(), view, lays), loose(run, view, lays), Html.live("span", "health", view.word("health")));
    }

    /** Where the loose probe lies; a form where taps cannot be taken. */
    private static String loose(Watched run, View view, boolean lays) {
        if (run.rig().channels(Role.LOOSE).isEmpty()) {
            return "";
        }
        String says = "<p>Loose probe: " + Html.live("span", "loose", view.word("loose")) + "</p>";
        if (!lays) {
            return says;
        }
        StringBuilder spots = new StringBuilder();
        Spot.of(run.rig()).forEach(spot -> spots.append("<option>").append(Html.text(spot.name())).append("</option>"));
        return says + """
                <form class="small" method="post" action="/spot"><label>Tap on the drawing where it lies, or choose: <select name="spot">%s</select></label>
                <button>It lies there</button> <span id="laid-said"></span></form>""".formatted(spots);
    }

    /** What a view without script must say by itself. */
    private static String age(Watched run, View view) {
        boolean old = !view.mark("told").equals("over") && run.live().ageSeconds() > OLD_SECONDS;
        return old ? Spots.say(" data-mark=\"stale\">No scan for %.0f s: what you see is old. A loop that stands still opens the"
                + " contactor within a second.", run.live().ageSeconds()) : ">";
    }

    private static String answers(View view) {
        return "<dl>" + answer("Ends", Html.live("b", "ends", view.word("ends")))
                + answer("When", Html.live("b", "when", view.word("when")) + " "
                        + Html.live("span", "basis", view.word("basis")))
                + answer("Hottest", Html.live("span", "hottest", view.word("hottest")))
                + answer("At its end", "<span id=\"ahead\" data-mark=\"" + Html.text(view.mark("ahead")) + "\">"
                        + Html.text(view.word("ahead")) + "</span>")
                + answer("Nearest", Html.live("span", "nearest", view.word("nearest")))
                + answer("Cells left", "<span id=\"left\" data-mark=\"" + Html.text(view.mark("left")) + "\">"
                        + Html.text(view.word("left")) + "</span>")
                + answer("Notices", Html.live("span", "notices", view.word("notices")))
                + answer("Devices", Html.live("span", "instruments", view.word("instruments"))) + "</dl>";
    }

    private static String answer(String what, String words) {
        return "<div><dt>" + what + "</dt><dd>" + words + "</dd></div>";
    }
}
