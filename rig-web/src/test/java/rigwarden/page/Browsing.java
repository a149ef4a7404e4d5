package rigwarden.page;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Debian's Chromium without a window, and what it had to complain about. */
final class Browsing implements AutoCloseable {
    private static final List<Path> PLACES = List.of(Path.of("/usr/bin/chromium"), Path.of("/usr/bin/chromium-browser"),
            Path.of("/usr/bin/google-chrome"));

    /** What comes comes sooner; a busy machine is no failure. */
    private static final double PATIENCE_MILLIS = 60_000;

    private final Playwright playwright;
    private final Browser browser;
    final List<String> complaints = new ArrayList<>();

    Browsing() {
        Path chromium = PLACES.stream().filter(Files::isExecutable).findFirst()
                .orElseThrow(() -> new AssertionError("there is no Chromium: run `hardware/prepare tests` first"));
        PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE_MILLIS);
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright.chromium().launch(new BrowserType.LaunchOptions()
                .setExecutablePath(chromium)
                .setArgs(List.of("--no-sandbox", "--disable-dev-shm-usage")));
    }

    /** Shuts every page, and forgets what they complained about: a page left open goes on asking for a night that is over. */
    void forget() {
        browser.contexts().forEach(BrowserContext::close);
        complaints.clear();
    }

    /** A page of its own, 360 × 800 by day with script unless the options say otherwise. */
    Page page(Browser.NewContextOptions options) {
        Page page = browser.newContext(options).newPage();
        page.setDefaultTimeout(PATIENCE_MILLIS);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error") || message.type().equals("warning")) {
                complaints.add(message.text());
            }
        });
        page.onPageError(error -> complaints.add(error));
        return page;
    }

    Page page() {
        return page(phone());
    }

    static Browser.NewContextOptions phone() {
        return new Browser.NewContextOptions().setViewportSize(360, 800);
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
