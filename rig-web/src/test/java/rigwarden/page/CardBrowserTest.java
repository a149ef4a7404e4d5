package rigwarden.page;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.command.Replays;
import rigwarden.emulated.Rehearsal;
import rigwarden.findings.Tally;
import rigwarden.live.Complaints;
import rigwarden.live.Desk;
import rigwarden.live.Foresight;
import rigwarden.live.GoodNight;
import rigwarden.live.Live;
import rigwarden.live.Stepped;
import rigwarden.live.Watched;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.paper.Card;
import rigwarden.paper.GoodNightCard;
import rigwarden.paper.StoredRun;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Request;

/** Both cards as a person meets them on the page: before a start, and beside a run that is over. */
class CardBrowserTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");
    private static final String PROGRAMME = """
            name = "short look"
            unattended = false
            [[step]]
            kind = "discharge"
            rate_c = 0.5
            cut_off_v = 2.50
            [[step]]
            kind = "park"
            rate_c = 0.2
            share = 0.40
            ceiling_v = 3.60
            """;

    @TempDir
    static Path folder;

    private static Browsing browser;
    private static Read.Sound<Rig> rig;
    private static Program program;
    private static Logbook book;
    private static Card card;
    private static Tally tally;

    private final Desk desk = new Desk();
    private final Complaints complaints = new Complaints();
    private final List<String> confirmed = Collections.synchronizedList(new ArrayList<>());
    private Site site;

    @BeforeAll
    static void aShortRunIsOver() throws Exception {
        Passphrase.set(folder, "four words for two".toCharArray());
        browser = new Browsing();
        rig = (Read.Sound<Rig>) RigFile.read(RIG);
        program = ((Read.Sound<Program>) ProgramFile.read("short.toml", PROGRAMME, rig)).value();
        book = Logbook.open(folder, "test");
        Logbook.Begun begun = book.begin(new RunAbout(Files.readString(RIG), PROGRAMME, Map.of(), "test", 1, true, "rehearsal", 0),
                rig.value().name(), program.name(), rig.value().channels(), 1_000_000, RunSettings.USUAL.withBallast(0), _ -> { });
        Foresight foresight = new Foresight(rig.value(), program);
        tally = new Tally(rig.value());
        Rehearsal rehearsal = new Rehearsal(rig.value(), program, 1, List.of(), (scan, inbox, orders, events) -> {
            foresight.offer(scan, inbox, orders, events);
            tally.scan(scan);
            while (begun.writer().fill() > 0.5) {
                Thread.onSpinWait();
            }
            begun.writer().offer(scan, inbox, orders, events);
        });
        while (!rehearsal.over()) {
            rehearsal.scan().forEach(CardBrowserTest::mark);
        }
        begun.writer().close();
        book.finish(begun.number(), Outcome.FINISHED, "");
        LocalDateTime evening = LocalDateTime.of(2026, 1, 2, 22, 10);
        card = GoodNightCard.of(rig.value(), program, new GoodNightCard.Expected(tally.steps(), Optional.empty(),
                evening.plusHours(9), foresight.at(32_400_000_000_000L), foresight.left().words()), evening, List.of(), List.of());
    }

    private static void mark(Event event) {
        if (event instanceof Event.StepBegun begun) {
            tally.begun(begun.step(), begun.kind());
        } else if (event instanceof Event.StepEnded ended) {
            tally.ended(ended.by(), ended.settled(), ended.account());
        }
    }

    @AfterAll
    static void shut() {
        browser.close();
        book.close();
        Replays.all(folder);
    }

    @BeforeEach
    void anotherRunWaitsForItsStart() throws Exception {
        Live live = new Live(rig.value(), program, (_, _, _, _) -> { });
        Rehearsal rehearsal = new Rehearsal(rig.value(), program, 1, List.of(), live);
        for (int i = 0; i < 10; i++) {
            rehearsal.scan();
        }
        Stepped.look(live);
        Watched watched = new Watched(2, rig.value(), program, live, desk, false, 1, book.file(2),
                () -> List.of("phone: NOT delivered, 3 attempts: answered 503; 1 waiting; nothing delivered yet"),
                Optional.of(new GoodNight(card, confirmed::add)), Optional.empty(), Optional.empty(), complaints);
        complaints.take("source: -222 \"<b>Data</b> out of range\"", Stepped.look(live).scan().nanos());
        site = new Site(new Site.Place(InetAddress.getLoopbackAddress(), 0, Set.of()), () -> Optional.of(watched),
                new Shelf(book), folder);
    }

    @AfterEach
    void over() {
        browser.forget();
        site.close();
    }

    private String url() {
        return "http://127.0.0.1:" + site.port();
    }

    private void signIn(Page page) {
        page.navigate(url() + "/sign-in");
        page.locator("input[name=passphrase]").fill("four words for two");
        page.locator("main button").click();
    }

    @Test
    void the_card_is_read_and_ticked_before_a_start_and_that_is_taken_down() {
        Page page = browser.page();
        signIn(page);
        assertThat(page.locator(".card h2")).containsText("Good night?");
        assertThat(page.locator(".card")).containsText("nothing here shows that either way to stop works");
        assertThat(page.locator(".card")).containsText("No notices: no file says where they go.");
        assertThat(page.locator("#notices")).containsText("phone: NOT delivered, 3 attempts: answered 503");
        assertThat(page.locator("#instruments")).hasText("source: -222 \"<b>Data</b> out of range\" (at 0:00:00)");

        page.locator("form.start button").click();
        assertThat(desk.get()).as("the browser asks for the tick").isEqualTo(Inbox.EMPTY);
        page.locator("input[name=card]").check();
        page.locator("form.start button").click();
        assertThat(page.locator("main")).containsText("Asked for.");

        assertThat(desk.get().requests()).containsExactly(Request.START);
        assertThat(confirmed).singleElement().asString().contains("confirmed the good-night card", "hottest expected cell 1");
    }

    @Test
    void a_start_without_the_tick_is_refused_whatever_sends_it() throws Exception {
        try (HttpClient client = HttpClient.newHttpClient()) {
            String cookie = client.send(post("/sign-in", "passphrase=four+words+for+two", ""),
                    HttpResponse.BodyHandlers.discarding()).headers().firstValue("Set-Cookie").orElseThrow().split(";", 2)[0];

            HttpResponse<String> answer = client.send(post("/ask", "what=START", cookie), HttpResponse.BodyHandlers.ofString());

            assertThat(answer.statusCode()).isEqualTo(409);
            assertThat(answer.body()).contains("Read the good-night card");
        }
        assertThat(desk.get()).isEqualTo(Inbox.EMPTY);
        assertThat(confirmed).isEmpty();
    }

    private HttpRequest post(String path, String form, String cookie) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(url() + path)).header("Origin", url())
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(form));
        return (cookie.isEmpty() ? request : request.header("Cookie", cookie)).build();
    }

    @Test
    void what_the_file_gives_is_what_the_run_gave() {
        StoredRun stored = StoredRun.whole(book.file(1)).orElseThrow();

        assertThat(stored.told().steps()).isEqualTo(tally.steps()).hasSize(2);
        assertThat(stored.told().untold()).isEmpty();
        assertThat(stored.trip()).isEmpty();
    }

    @Test
    void the_morning_card_lies_over_the_charts_of_a_run_that_is_over() {
        Page page = browser.page();
        page.navigate(url() + "/runs/1");

        assertThat(page.locator(".card h2")).hasText("Good morning. Run 0001, short look on hut bench, one cell: finished");
        assertThat(page.locator(".card")).containsText("The programme came to its end.");
        assertThat(page.locator(".card")).containsText("at least ");
        assertThat(page.locator(".card")).containsText("is a lower bound");
        assertThat(page.locator(".card")).containsText("It ran attended");
    }

    @Test
    void both_cards_are_looked_at_on_a_phone_and_on_a_desk() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            shot(Browsing.phone().setColorScheme(scheme), "card-phone-" + scheme);
        }
        shot(new Browser.NewContextOptions().setViewportSize(1280, 800), "card-desk");

        assertThat(browser.complaints).isEmpty();
    }

    private void shot(Browser.NewContextOptions options, String name) {
        Page page = browser.page(options);
        signIn(page);
        assertThat(page.locator(".card")).isVisible();
        save(page, name + "-night-top", false);
        save(page, name + "-night", true);
        page.navigate(url() + "/runs/1");
        assertThat(page.locator(".card")).isVisible();
        save(page, name + "-morning-top", false);
        save(page, name + "-morning", true);
        boolean sideways = (Boolean) page.evaluate("() => document.documentElement.scrollWidth > innerWidth");
        assertThat(sideways).as("scrolls sideways").isFalse();
    }

    private static void save(Page page, String name, boolean whole) {
        page.screenshot(new Page.ScreenshotOptions().setFullPage(whole)
                .setPath(Path.of("target", "screenshots", name.toLowerCase(java.util.Locale.ROOT) + ".png")));
    }
}
