package rigwarden.page;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Cookie;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** STOP from a real browser: the model's current is zero within two seconds of the click. */
class StopBrowserTest {
    /** A quick machine drains one flood before anybody has looked. */
    private static final int FLOODS = 5;
    private static final double LONGEST_SECONDS = 2;
    private static final double NOTHING_A = 0.5;
    private static Browsing browser;

    @TempDir
    Path folder;

    private Night night;

    @BeforeAll
    static void open() {
        browser = new Browsing();
    }

    @AfterAll
    static void shut() {
        browser.close();
    }

    @BeforeEach
    void aNightIsUnderWay() throws Exception {
        night = Night.paced(folder, 20);
        night.waitForAmps(true, 15, 30);
    }

    @AfterEach
    void over() throws Exception {
        browser.forget();
        night.close();
    }

    private void click(Page page) throws InterruptedException {
        assertThat(page.locator("#stop-own")).isVisible();
        assertThat(page.locator("#stop-here")).isHidden();
        page.locator("#stop-own").click();
        assertThat(night.waitForAmps(false, NOTHING_A, LONGEST_SECONDS)).isLessThan(LONGEST_SECONDS);
        assertThat(page.locator("h1")).hasText("Stopped: everything is off");
        assertThat(page.locator("main")).containsText("current 0.0 A, contactor open, bus");
    }

    @Test
    void one_click_stops_the_current_and_the_answer_says_what_is_measured() throws Exception {
        Page page = browser.page();
        page.navigate(night.url());

        click(page);

        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target", "screenshots", "phone-light-stopped.png")));
        assertThat(browser.complaints).isEmpty();
    }

    @Test
    void it_works_with_script_off() throws Exception {
        Page page = browser.page(Browsing.phone().setJavaScriptEnabled(false));
        page.navigate(night.url());

        click(page);
    }

    @Test
    void it_works_with_script_off_while_ten_thousand_requests_that_nobody_needs_are_queued() throws Exception {
        Page page = browser.page(Browsing.phone().setJavaScriptEnabled(false));
        page.navigate(night.url() + "/runs");
        assertThat(page.locator("#stop-own")).isVisible();

        try (Junk junk = new Junk(night.site.port())) {
            boolean answers = true;
            for (int flood = 0; flood < FLOODS && answers; flood++) {
                junk.queue(10_000);
                answers = junk.answers(100);
            }
            assertThat(answers).as("the page's own port still answers within 0.1 s").isFalse();
            click(page);
        }
    }

    @Test
    void it_works_while_two_hundred_half_said_requests_hang_on_its_own_port() throws Exception {
        Page page = browser.page();
        page.navigate(night.url());

        try (Junk junk = new Junk(night.site.stopPort())) {
            junk.hang(200);
            click(page);
        }
    }

    @Test
    void it_works_from_an_expired_session() throws Exception {
        Browser.NewContextOptions options = Browsing.phone();
        Page page = browser.page(options);
        page.context().addCookies(List.of(new Cookie("rigwarden", "expired-long-ago").setUrl(night.url())));
        page.navigate(night.url());

        click(page);
    }

    @Test
    void it_works_while_the_stream_reconnects() throws Exception {
        Page page = browser.page();
        page.navigate(night.url());
        assertThat(page.locator("#link[data-mark=live]")).isAttached();

        night.site.dropViewers();
        assertThat(page.locator("#link")).containsText("No connection");
        click(page);
    }

    @Test
    void where_stops_own_port_cannot_be_reached_the_button_leads_to_the_page_itself() throws Exception {
        Page page = browser.page();
        page.route("**/reach.css", route -> route.abort());
        page.navigate(night.url());

        assertThat(page.locator("#stop-own")).isHidden();
        page.locator("#stop-here").click();
        assertThat(night.waitForAmps(false, NOTHING_A, LONGEST_SECONDS)).isLessThan(LONGEST_SECONDS);

        assertThat(page.locator("h1")).hasText("Stopped: everything is off");
    }
}
