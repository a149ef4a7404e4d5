package rigwarden.page;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Style sheets, scripts and the icon from this jar and from the chart library's. */
final class Assets {
    private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/dist/";
    private static final Map<String, String> PLACES = Map.of("page.css", "/rigwarden/page/page.css", "icon.svg",
            "/rigwarden/page/icon.svg", "now.js",
            "/rigwarden/page/now.js", "charts.js", "/rigwarden/page/charts.js", "run.js", "/rigwarden/page/run.js",
            "uplot.js", UPLOT + "uPlot.iife.min.js", "uplot.css", UPLOT + "uPlot.min.css");
    private static final Map<String, String> READ = new ConcurrentHashMap<>();

    private Assets() {}

    /** Names of all of them, as they are asked for. */
    static Iterable<String> names() {
        return PLACES.keySet();
    }

    static String text(String name) {
        return READ.computeIfAbsent(name, Assets::read);
    }

    static String type(String name) {
        if (name.endsWith(".svg")) {
            return "image/svg+xml";
        }
        return name.endsWith(".css") ? "text/css; charset=utf-8" : "text/javascript; charset=utf-8";
    }

    private static String read(String name) {
        try (InputStream in = Assets.class.getResourceAsStream(PLACES.get(name))) {
            if (in == null) {
                throw new IllegalStateException("the distribution lacks " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("the distribution's " + name + " cannot be read", e);
        }
    }
}
