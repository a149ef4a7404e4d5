package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class SameSiteTest {
    private static boolean stops(Map<String, String> headers) {
        return SameSite.allows(headers::get, "rig.lan");
    }

    private static boolean asks(Map<String, String> headers) {
        return SameSite.insists(headers::get, "rig.lan:8040");
    }

    @Test
    void stop_is_refused_only_where_the_browser_itself_says_that_another_site_asks() {
        assertThat(stops(Map.of())).isTrue();
        assertThat(stops(Map.of("Sec-Fetch-Site", "same-origin"))).isTrue();
        assertThat(stops(Map.of("Sec-Fetch-Site", "same-site", "Origin", "http://rig.lan:8040"))).isTrue();
        assertThat(stops(Map.of("Sec-Fetch-Site", "cross-site"))).isFalse();
        assertThat(stops(Map.of("Origin", "http://elsewhere.example"))).isFalse();
        assertThat(stops(Map.of("Origin", "http://rig.lan:8040"))).isTrue();
    }

    @Test
    void everything_else_must_come_from_the_very_same_origin() {
        assertThat(asks(Map.of("Sec-Fetch-Site", "same-origin"))).isTrue();
        assertThat(asks(Map.of("Origin", "http://rig.lan:8040"))).isTrue();
        assertThat(asks(Map.of())).isFalse();
        assertThat(asks(Map.of("Sec-Fetch-Site", "same-site"))).isFalse();
        assertThat(asks(Map.of("Origin", "http://rig.lan:9000"))).isFalse();
        assertThat(asks(Map.of("Origin", "null"))).isFalse();
    }

    @Test
    void a_host_is_taken_only_where_it_is_one() {
        assertThat(Reach.hostOf("rig.lan:8040")).isEqualTo("rig.lan");
        assertThat(Reach.hostOf("[::1]:8040")).isEqualTo("[::1]");
        assertThat(Reach.hostOf("192.168.1.5")).isEqualTo("192.168.1.5");
        assertThat(Reach.hostOf("x; script-src *")).isEmpty();
        assertThat(Reach.hostOf(null)).isEmpty();
    }
}
