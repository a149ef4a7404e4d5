package rigwarden.page;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The second reference rig on the page. */
class PackBrowserTest {
    private static final int CELLS = 8;

    @TempDir
    Path folder;

    @Test
    void eight_cells_lie_on_the_page_as_they_lie_on_the_bench_each_with_its_voltage() throws Exception {
        try (Browsing browser = new Browsing();
                Night night = new Night(folder, "eight-cells", 30_000, 60, UnaryOperator.identity())) {
            night.waitForScans(30_100);
            Page page = browser.page();
            page.navigate(night.url());

            assertThat(page.locator("svg.pack rect.cell")).hasCount(CELLS);
            assertThat(page.locator("svg.pack line.bar")).hasCount(CELLS - 1);
            List<String> volts = page.locator("svg.pack .cell-v").allTextContents();
            assertThat(volts).hasSize(CELLS).allMatch(v -> v.matches("3\\.\\d{3}"));

            save(browser, night, Browsing.phone().setColorScheme(ColorScheme.DARK), "pack-phone-dark");
            save(browser, night, new Browser.NewContextOptions().setViewportSize(1280, 800), "pack-desk-light");
            assertThat(browser.complaints).isEmpty();
        }
    }

    private static void save(Browsing browser, Night night, Browser.NewContextOptions options, String name) {
        Page page = browser.page(options);
        page.navigate(night.url());
        assertThat(page.locator("#chart-warmth canvas")).isVisible();
        page.screenshot(new Page.ScreenshotOptions().setFullPage(true)
                .setPath(Path.of("target", "screenshots", name + ".png")));
    }
}
