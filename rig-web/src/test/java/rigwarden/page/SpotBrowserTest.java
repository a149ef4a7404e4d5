package rigwarden.page;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One tap on the drawing says where the loose probe lies. */
class SpotBrowserTest {
    @TempDir
    Path folder;

    @Test
    void a_tap_on_a_stud_and_one_on_a_bar_tell_where_the_probe_lies() throws Exception {
        try (Browsing browser = new Browsing(); Night night = Night.carried(folder, "eight-cells", 5, 2_000, 20)) {
            night.waitForScans(2_050);
            Page page = browser.page();
            page.navigate(night.url());
            assertThat(page.locator("#loose")).containsText("nobody has said where it lies");

            page.locator("[data-spot='cell 3, + stud']").click();
            assertThat(page.locator("#loose")).containsText("on cell 3, + stud");
            assertThat(page.locator("#s-stud_positive3")).hasAttribute("data-mark", "here");

            Locator bar = page.locator("[data-spot='bar 6–7']");
            bar.click();
            assertThat(page.locator("#loose")).containsText(Pattern.compile("on bar 6–7, .*\\d°|on bar 6–7, .*°C"));
            assertThat(page.locator("#s-bar6")).hasAttribute("data-mark", "here");
            assertThat(page.locator("#s-stud_positive3")).hasAttribute("data-mark", "");
            assertThat(page.locator("#laid-said")).containsText("Kept: it lies on bar 6–7.");
            page.screenshot(new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "screenshots", "spot-phone.png")));

            Page plain = browser.page(Browsing.phone().setJavaScriptEnabled(false));
            plain.navigate(night.url());
            plain.locator("select[name=spot]").selectOption("cell 8, body");
            plain.locator("form[action='/spot'] button").click();
            assertThat(page.locator("#loose")).containsText("on cell 8, body");
            assertThat(browser.complaints).isEmpty();
        }
    }

    @Test
    void a_rig_without_a_loose_probe_shows_nothing_of_one() throws Exception {
        try (Browsing browser = new Browsing(); Night night = Night.paced(folder, 20)) {
            night.waitForScans(20);
            Page page = browser.page(new Browser.NewContextOptions());
            page.navigate(night.url());

            assertThat(page.locator("#loose")).hasCount(0);
            assertThat(page.locator("[data-spot]")).hasCount(0);
        }
    }
}
