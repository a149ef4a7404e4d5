package rigwarden.page;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.emulated.BoardFault;
import rigwarden.pack.Fault;

/** A trip, as the operator meets it on the page. */
class ClearBrowserTest {
    private final Browsing browser = new Browsing();

    @TempDir
    Path folder;

    private Night night;

    @BeforeEach
    void aNightIsUnderWay() throws Exception {
        Passphrase.set(folder, "four words for two".toCharArray());
        night = Night.paced(folder, 20);
        night.waitForAmps(true, 15, 30);
    }

    @AfterEach
    void over() {
        browser.close();
        night.close();
    }

    @Test
    void a_trip_says_why_and_only_the_operator_can_ask_to_clear_it() throws Exception {
        Page page = browser.page();
        page.navigate(night.url());
        assertThat(page.locator("#link[data-mark=live]")).isAttached();

        night.inflict(new BoardFault.InWorld(new Fault.LoopOpens()));
        assertThat(page.locator("h1")).hasText("Tripped: everything is ordered off");
        assertThat(page.locator("#trip")).containsText("It clears:");
        assertThat(page.locator("#strip rect.trip-mark title")).containsText("tripped by rule 41, loop open, at 0:0");
        assertThat(page.locator("form.clear")).hasCount(0);
        page.screenshot(new Page.ScreenshotOptions().setFullPage(true)
                .setPath(Path.of("target", "screenshots", "phone-light-tripped.png")));

        page.locator(".asks a").click();
        page.locator("input[name=passphrase]").fill("not this one");
        page.locator("main button").click();
        assertThat(page.locator("main")).containsText("That was not it.");
        page.locator("input[name=passphrase]").fill("four words for two");
        page.locator("main button").click();

        page.locator("form.clear button").click();
        assertThat(page.locator("main")).containsText("Asked for.");
        assertThat(page.context().cookies().getFirst().httpOnly).isTrue();
    }
}
