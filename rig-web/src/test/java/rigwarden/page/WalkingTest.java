package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.joint.JointOhms;
import rigwarden.logbook.Logbook;

/** A hand meter is walked along a rig that charges. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class WalkingTest {
    private static Night night;
    private static HttpClient client;

    @TempDir
    static Path folder;

    @BeforeAll
    static void a_night_charges() throws Exception {
        meter(LocalDate.now(ZoneId.systemDefault()).minusDays(366));
        night = Night.paced(folder, 20);
        client = HttpClient.newHttpClient();
        night.waitForScans(20);
    }

    private static void meter(LocalDate calibrated) throws IOException {
        Files.writeString(folder.resolve(Walking.METER), """
                name = "the drawer's meter"
                percent = 0.5
                counts = 2
                digit = 0.00001
                range = 0.4
                calibrated = "%s"
                holds_days = 365
                """.formatted(calibrated));
    }

    @AfterAll
    static void over() {
        client.close();
        night.close();
        try (Logbook book = Logbook.open(folder, "later")) {
            assertThat(book.joints(1)).extracting(JointOhms::joint).containsExactly("P1 at fuse", "P1 at B+, which is cell 1, + stud");
            assertThat(book.joints(1).getLast().ohms()).as("the last of two readings").isBetween(35e-6, 45e-6);
        }
    }

    private static HttpResponse<String> get(String path) throws Exception {
        return client.send(HttpRequest.newBuilder(URI.create(night.url() + path)).build(), HttpResponse.BodyHandlers.ofString());
    }

    private static HttpResponse<String> post(String path, String form) throws Exception {
        return client.send(HttpRequest.newBuilder(URI.create(night.url() + path)).header("Origin", night.url())
                .header("Content-Type", "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString(form)).build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private static int next(HttpResponse<String> answer) {
        return Integer.parseInt(answer.headers().firstValue("Rigwarden-Joint").orElseThrow());
    }

    @Test
    @Order(1)
    void a_meter_whose_calibration_has_lapsed_is_refused_until_another_is_described() throws Exception {
        HttpResponse<String> lapsed = post("/joints.txt", "joint=1&mv=4.7");
        HttpResponse<String> seen = get("/joints");
        meter(LocalDate.now(ZoneId.systemDefault()).minusDays(365));
        HttpResponse<String> held = get("/joints");

        assertThat(lapsed.statusCode()).isEqualTo(422);
        assertThat(lapsed.body()).contains("Nothing is kept: in hand-meter.toml, meter.calibrated is ", "within 365 days of ");
        assertThat(next(lapsed)).as("still the first").isEqualTo(1);
        assertThat(seen.body()).contains("Have the meter calibrated, or use another.");
        assertThat(held.body()).contains("the drawer&#39;s meter").doesNotContain("meter.calibrated");
    }

    @Test
    @Order(2)
    void it_is_led_along_the_joints_that_carry_the_current_and_what_is_typed_is_kept_ranked() throws Exception {
        night.waitForAmps(true, 15, 120);
        Thread.sleep(700);
        HttpResponse<String> begin = get("/joints.txt");
        assertThat(begin.headers().firstValue("Rigwarden-Run")).hasValue("1");
        assertThat(begin.body()).contains("Next, 1 of ", "P1 at B+, which is cell 1, + stud");
        double amps = Math.abs(night.modelAmps());

        HttpResponse<String> first = post("/joints.txt", "joint=1&mv=" + Math.round(amps * 20e-3 * 100) / 100.0);
        assertThat(first.statusCode()).isEqualTo(200);
        assertThat(first.body()).contains("P1 at B+", " mV at ", " µΩ");
        assertThat(next(first)).isEqualTo(2);
        post("/joints.txt", "joint=2&mv=" + Math.round(amps * 90e-3 * 100) / 100.0);
        HttpResponse<String> again = post("/joints", "joint=1&mv=" + Math.round(amps * 40e-3 * 100) / 100.0);

        assertThat(again.body()).contains("Found, the highest first").containsSubsequence("<td>P1 at fuse</td>", "<td>P1 at B+");
        assertThat(again.body()).contains("the drawer&#39;s meter");
    }

    @Test
    @Order(3)
    void wrong_input_gets_one_clear_message_and_nothing_is_kept() throws Exception {
        for (String[] wrong : new String[][] {{"3", "4,7", "is no reading"}, {"3", "5+mV", "is no reading"}, {"3", "", "is no reading"}, {"3", "399", "burns"},
            {"99", "1", "There is no joint 99"}, {"x", "1", "There is no joint 0"}}) {
            HttpResponse<String> answer = post("/joints.txt", "joint=" + wrong[0] + "&mv=" + wrong[1]);
            assertThat(answer.statusCode()).as(wrong[1]).isEqualTo(422);
            assertThat(answer.body()).contains(wrong[2]);
            assertThat(next(answer)).as("still the same").isEqualTo(3);
        }
    }

    @Test
    @Order(4)
    void a_joint_of_a_device_that_rests_is_not_asked_for_and_one_that_cannot_be_reached_is_passed() throws Exception {
        int joint = next(get("/joints.txt"));
        String visited = "";
        for (int i = 0; i < 40 && joint != 0; i++) {
            HttpResponse<String> answer = post("/joints.txt", "joint=" + joint + "&pass=yes");
            visited += answer.body();
            joint = next(answer);
        }

        assertThat(joint).isZero();
        assertThat(visited).contains("at source, plus").doesNotContain("at sink").contains("Every joint of this path has been visited.");
    }

    @Test
    @Order(5)
    void only_this_page_itself_may_type() throws Exception {
        HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(night.url() + "/joints"))
                .header("Origin", "http://elsewhere.example").POST(HttpRequest.BodyPublishers.ofString("joint=3&mv=1")).build(),
                HttpResponse.BodyHandlers.ofString());

        assertThat(answer.statusCode()).isEqualTo(403);
    }
}
