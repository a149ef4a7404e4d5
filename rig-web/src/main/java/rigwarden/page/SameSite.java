package rigwarden.page;

import java.net.URI;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Whether a POST comes from a page of ours, as far as the browser says; and the policy that our pages carry. */
final class SameSite {
    private SameSite() {}

    /**
     * For STOP: refuses only what a browser itself says comes from another site. What is no browser may stop.
     *
     * @param header a request header by name, or null
     * @param host our host as the request names it, without its port
     */
    static boolean allows(UnaryOperator<String> header, String host) {
        String site = header.apply("Sec-Fetch-Site");
        if (site != null) {
            return !site.equals("cross-site");
        }
        String origin = header.apply("Origin");
        return origin == null || hostOf(origin).equals(host);
    }

    /** For everything else: the browser must say that the very same origin asks. */
    static boolean insists(UnaryOperator<String> header, String hostAndPort) {
        String site = header.apply("Sec-Fetch-Site");
        if (site != null) {
            return site.equals("same-origin");
        }
        String origin = header.apply("Origin");
        return origin != null && origin.equals("http://" + hostAndPort);
    }

    private static String hostOf(String origin) {
        try {
            String host = URI.create(origin).getHost();
            return host == null ? "" : host;
        } catch (IllegalArgumentException _) {
            return "";
        }
    }

    /** Nothing from outside, nothing inline; forms and style sheets of STOP's own port besides. */
    static String policy(Optional<String> besides) {
        String other = besides.map(port -> " " + port).orElse("");
        return "default-src 'none'; script-src 'self'; connect-src 'self'; img-src 'self'; style-src 'self'" + other
                + "; form-action 'self'" + other + "; base-uri 'none'; frame-ancestors 'none'";
    }
}
