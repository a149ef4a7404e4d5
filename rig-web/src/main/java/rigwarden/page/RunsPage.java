package rigwarden.page;

import java.util.List;
import java.util.Optional;
import rigwarden.live.Watched;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.paper.Spots;

/** The area Runs: the list, and one run with its charts and its events. */
final class RunsPage {
    private static final String CHARTS = """
            <link rel="stylesheet" href="/uplot.css">
            <script src="/uplot.js" defer></script>
            <script type="module" src="/run.js"></script>""";

    private RunsPage() {}

    static String list(Shell shell, List<LedgerRun> runs, Optional<Watched> running) {
        StringBuilder items = new StringBuilder();
        for (LedgerRun run : runs) {
            boolean now = running.isPresent() && running.get().number() == run.number() && run.outcome() == Outcome.RUNNING;
            items.append(Spots.say("""
                    <li><a href="/runs/%d"><b>%04d</b> %s</a> <span class="outcome" data-mark="%s">%s</span>
                    <span class="small">%s · %s %s</span>%s</li>""", run.number(), run.number(),
                    Html.text(run.programme()), run.outcome().word(), run.outcome().word(), Html.text(run.started()),
                    Html.text(run.rig()), Html.text(run.words()),
                    now ? " <a href=\"/\">watch it</a>" : csv(run)));
        }
        String main = runs.isEmpty() ? "<p>No runs yet.</p>" : "<ul class=\"runs\">" + items + "</ul>";
        return shell.page(Shell.Area.RUNS, "Runs", "", "<h1>Runs</h1>" + main);
    }

    private static String csv(LedgerRun run) {
        return run.outcome() == Outcome.RUNNING
                ? ""
                : Spots.say(" <a href=\"/runs/%d.csv\">CSV</a>", run.number());
    }

    /** One run; its events in the order in which they happened. */
    static String one(Shell shell, LedgerRun run, RunReader reader, MorningShelf.Kept morning) {
        RunAbout about = reader.about();
        StringBuilder events = new StringBuilder();
        for (StoredEvent event : reader.events()) {
            events.append("<li><b>").append(Spots.clock(event.nanos() - about.originNanos())).append("</b> ")
                    .append(Html.text(words(event))).append("</li>");
        }
        return shell.page(Shell.Area.RUNS, "Run " + run.number(), CHARTS + again(morning), """
                %s<h1>Run %04d: %s</h1>
                <p>%s on %s%s.%s %s</p>
                %s
                <section id="charts" data-src="/runs/%d/trace"><p class="small">Each point keeps the lowest and the highest
                reading of its span. Drag to look closer, double-click to see all.</p>
                <div class="chart" id="chart-cells"></div><div class="chart" id="chart-current"></div>
                <div class="chart" id="chart-warmth"></div></section>
                <section><h2>What happened</h2><ol class="events">%s</ol></section>
                """.formatted(about.rehearsal() ? "<p class=\"band\">REHEARSAL<span> · this run was emulated</span></p>" : "",
                run.number(), run.outcome().word(), Html.text(run.programme()), Html.text(run.rig()),
                about.rehearsal() ? "" : ", begun " + Html.text(run.started()), csv(run), Html.text(run.words()),
                card(morning), run.number(), events));
    }

    private static String again(MorningShelf.Kept morning) {
        return morning instanceof MorningShelf.Kept.Making ? "<meta http-equiv=\"refresh\" content=\"3\">" : "";
    }

    private static String card(MorningShelf.Kept morning) {
        return switch (morning) {
            case MorningShelf.Kept.Made made -> CardHtml.of(made.card());
            case MorningShelf.Kept.Making _ -> "<p class=\"note\">The morning card is made from all scans; it will be here in"
                    + " some seconds.</p>";
            case MorningShelf.Kept.None none -> none.why().isEmpty() ? "" : "<p class=\"small\">" + Html.text(none.why()) + "</p>";
        };
    }

    private static String words(StoredEvent event) {
        String step = event.step().isPresent() ? "step " + event.step().getAsInt() + ", " : "";
        return step + event.kind().replace('_', ' ') + ": " + event.words();
    }
}
