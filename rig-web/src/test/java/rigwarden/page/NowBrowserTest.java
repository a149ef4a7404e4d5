package rigwarden.page;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** What a person sees of a night in a real browser. */
class NowBrowserTest {
    private static final long FAST = 130_000;
    private static final long SPIKE_SCAN = 41_234;
    private static final double SPIKE_VOLTS = 3.9;
    private static final int CELL = 4;
    private static Browsing browser;
    private static Night night;

    @TempDir
    static Path folder;

    @BeforeAll
    static void aNightWithOneWildReadingIsUnderWay() throws Exception {
        browser = new Browsing();
        night = new Night(folder, "one-cell", FAST, 60, NowBrowserTest::spiked);
        night.waitForScans(FAST + 300);
    }

    @AfterAll
    static void shut() {
        night.close();
        browser.close();
    }

    @AfterEach
    void shutPages() {
        browser.forget();
    }

    /** What the page is shown of one scan: a cell that jumps once. */
    private static Scan spiked(Scan scan) {
        if (scan.number() != SPIKE_SCAN) {
            return scan;
        }
        List<Reading> readings = new ArrayList<>(scan.readings());
        readings.set(CELL, new Reading.Valid(0, SPIKE_VOLTS, scan.nanos()));
        return new Scan(scan.number(), scan.nanos(), readings);
    }

    @Test
    void values_move_and_nothing_complains() {
        Page page = browser.page();
        page.navigate(night.url());
        String first = page.locator("#elapsed").textContent();

        assertThat(page.locator("#elapsed")).not().hasText(first);
        assertThat(page.locator("#charts[data-drawn]")).isAttached();

        assertThat(page.locator(".band")).containsText("REHEARSAL");
        assertThat(browser.complaints).isEmpty();
    }

    @Test
    void a_reading_of_one_scan_is_a_visible_stroke_when_the_whole_night_is_shown() {
        Page page = browser.page();
        page.navigate(night.url());
        assertThat(page.locator("#chart-cells canvas")).isVisible();

        double at = (double) SPIKE_SCAN / night.scans();
        assertThat(coloured(page, at - 0.2, at - 0.05)).as("beside it the curve lies lower").isZero();
        assertThat(coloured(page, at - 0.03, at + 0.03)).as("coloured pixels in the upper third, where the spike is")
                .isGreaterThan(5);
    }

    /** Coloured pixels in the upper third of the cells' chart, between two shares of its time. */
    private static int coloured(Page page, double from, double to) {
        return (Integer) page.evaluate("""
                ([from, to]) => {
                  const canvas = document.querySelector('#chart-cells canvas');
                  const { width, height } = canvas;
                  const data = canvas.getContext('2d').getImageData(0, 0, width, height).data;
                  let found = 0;
                  const left = 58 * devicePixelRatio;
                  const column = share => Math.round(left + (width - left) * share);
                  for (let y = 0; y < height * 0.35; y++) for (let x = column(from); x < column(to); x++) {
                    const at = 4 * (y * width + Math.floor(x));
                    const [r, g, b, a] = [data[at], data[at + 1], data[at + 2], data[at + 3]];
                    if (a > 60 && Math.max(r, g, b) - Math.min(r, g, b) > 60) found++;
                  }
                  return found;
                }""", List.of(from, to));
    }

    @Test
    void every_view_is_looked_at_on_a_phone_and_on_a_desk_by_day_and_by_night() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            shot(Browsing.phone().setColorScheme(scheme), "phone-" + scheme);
            shot(new Browser.NewContextOptions().setViewportSize(1280, 800).setColorScheme(scheme), "desk-" + scheme);
        }

        assertThat(browser.complaints).isEmpty();
    }

    private void shot(Browser.NewContextOptions options, String name) {
        Page page = browser.page(options);
        page.navigate(night.url());
        assertThat(page.locator("#chart-warmth canvas")).isVisible();
        assertThat(page.locator("body")).containsText("REHEARSAL");
        save(page, name + "-now-top", false);
        save(page, name + "-now", true);
        page.navigate(night.url() + "/runs");
        assertThat(page.locator("body")).containsText("REHEARSAL");
        save(page, name + "-runs", false);
        page.navigate(night.url() + "/runs/1");
        assertThat(page.locator("#chart-warmth canvas")).isVisible();
        save(page, name + "-run", true);
        boolean sideways = (Boolean) page.evaluate("() => document.documentElement.scrollWidth > innerWidth");
        assertThat(sideways).as("scrolls sideways").isFalse();
    }

    private static void save(Page page, String name, boolean whole) {
        page.screenshot(new Page.ScreenshotOptions().setFullPage(whole)
                .setPath(Path.of("target", "screenshots", name.toLowerCase(java.util.Locale.ROOT) + ".png")));
    }
}
