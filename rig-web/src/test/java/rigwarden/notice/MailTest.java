package rigwarden.notice;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.GreenMailUtil;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** E-mail to a server of this machine. */
@Timeout(120)
class MailTest {
    private static final Duration LONG = Duration.ofSeconds(60);

    @TempDir
    Path folder;

    private GreenMail server;

    @BeforeEach
    void aServerThatKnowsOneUser() {
        server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        server.setUser("me@hut.example", "me", "right");
        server.getUserManager().setAuthRequired(true);
        server.start();
    }

    @AfterEach
    void shut() {
        server.stop();
    }

    private Mail mail(int port, Mail.Security security, String password, Duration patience) {
        return new Mail("mailbox", new Mail.Server("127.0.0.1", port, security, "me",
                new Secret.InEnvironment("PASSWORD", _ -> password)), "rig@hut.example", List.of("me@hut.example"),
                EnumSet.allOf(What.class), patience);
    }

    private int port() {
        return server.getSmtp().getPort();
    }

    @Test
    void a_notice_arrives_with_its_title_as_subject_and_its_words_as_plain_text() throws Exception {
        Delivery delivery = mail(port(), Mail.Security.NONE, "right", LONG).send(Some.notice(What.TRIPPED, "30 °C over the room"));

        assertThat(delivery).isInstanceOf(Delivery.Delivered.class);
        MimeMessage arrived = server.getReceivedMessages()[0];
        assertThat(arrived.getSubject()).isEqualTo("30 °C over the room");
        assertThat(arrived.getAllRecipients()).extracting(String::valueOf).containsExactly("me@hut.example");
        assertThat(String.valueOf(arrived.getContent())).contains("Words of 30 °C over the room.", "2026-01-02T12:00:00Z");
        assertThat(arrived.getContentType()).isEqualToIgnoringCase("text/plain; charset=UTF-8");
    }

    @Test
    void a_wrong_password_is_said_without_saying_it() {
        Delivery delivery = mail(port(), Mail.Security.NONE, "wrong-secret", LONG).send(Some.notice(What.DONE, "done"));

        assertThat(delivery).isEqualTo(new Delivery.Failed("the mail server does not accept user and password", false));
        assertThat(server.getReceivedMessages()).isEmpty();
    }

    @Test
    void a_server_that_cannot_encrypt_gets_neither_password_nor_mail_where_that_is_wanted() {
        Delivery delivery = mail(port(), Mail.Security.STARTTLS, "right", LONG).send(Some.notice(What.DONE, "done"));

        assertThat(delivery).isInstanceOf(Delivery.Failed.class);
        assertThat(((Delivery.Failed) delivery).words()).containsIgnoringCase("STARTTLS");
        assertThat(server.getReceivedMessages()).isEmpty();
    }

    @Test
    void a_server_that_says_nothing_is_left() throws IOException {
        try (ServerSocket silent = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            Delivery delivery = mail(silent.getLocalPort(), Mail.Security.NONE, "right", Duration.ofMillis(200))
                    .send(Some.notice(What.DONE, "done"));

            assertThat(delivery).isEqualTo(new Delivery.Failed("no answer in time", false));
        }
    }

    @Test
    void a_server_that_is_not_there_and_comes_back_gets_it_then() {
        int before = port();
        server.stop();
        Mail gone = mail(before, Mail.Security.NONE, "right", LONG);
        assertThat(gone.send(Some.notice(What.TRIPPED, "trip"))).isInstanceOf(Delivery.Failed.class);

        aServerThatKnowsOneUser();
        Mail back = mail(port(), Mail.Security.NONE, "right", LONG);
        assertThat(back.send(Some.notice(What.TRIPPED, "trip"))).isInstanceOf(Delivery.Delivered.class);
        assertThat(GreenMailUtil.getBody(server.getReceivedMessages()[0])).contains("Words of trip.");
    }

    @Test
    void a_password_lies_in_a_file_of_its_own_and_only_its_first_line_counts() throws Exception {
        Path file = Files.writeString(folder.resolve("password"), "right\n# not this\n");

        assertThat(new Secret.InFile(file).read()).isEqualTo("right");
    }
}
