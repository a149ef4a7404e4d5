package rigwarden.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rigfile.KeyList;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.Refusal;

/** The file that says where notices go. */
class NoticeFileTest {
    private static final String PHONE = """
            check_in_min = 30

            [[web_hook]]
            name = "phone"
            url = "https://hooks.example/abc"
            form = "json"
            token_env = "HOOK_TOKEN"
            only = ["tripped", "check_in"]
            """;

    private static Read<NoticePlan> read(String text) {
        return NoticeFile.read("notices.toml", text, Path.of("/"), _ -> null);
    }

    private static List<String> refusals(String old, String replacement) {
        assertThat(PHONE).contains(old);
        return switch (read(PHONE.replace(old, replacement))) {
            case Read.Sound<NoticePlan> _ -> List.of();
            case Read.Refused<NoticePlan> refused -> refused.refusals().stream().map(Refusal::print).toList();
        };
    }

    @Test
    void a_phone_is_told_of_what_it_is_for_and_of_tests() {
        NoticePlan plan = ((Read.Sound<NoticePlan>) read(PHONE)).value();

        assertThat(plan.checkInMinutes()).isEqualTo(30);
        assertThat(plan.repeatHours()).isEqualTo(4);
        assertThat(plan.lines()).containsExactly("phone: web hook at https://hooks.example");
        Route phone = plan.routes().getFirst();
        assertThat(phone.takes(What.TRIPPED) && phone.takes(What.CHECK_IN) && phone.takes(What.TEST)).isTrue();
        assertThat(phone.takes(What.WARNED) || phone.takes(What.DONE)).isFalse();
    }

    @Test
    void the_example_is_sound_and_shows_every_key_but_those_that_stand_for_another() throws Exception {
        Path example = Path.of("..", "hardware", "rigs", "notices.toml");
        String text = Files.readString(example);

        assertThat(NoticeFile.read(example)).isInstanceOf(Read.Sound.class);
        assertThat(KeyList.of(NoticeFile::keys).stream().flatMap(t -> t.keys().stream())).allMatch(k -> text.contains(k.name())
                || k.name().equals("password_env"));
    }

    @Test
    void without_a_list_a_way_takes_everything() {
        Route phone = ((Read.Sound<NoticePlan>) read(PHONE.replaceAll("only = .*", ""))).value().routes().getFirst();

        assertThat(What.values()).allMatch(phone::takes);
    }

    @Test
    void a_mistyped_kind_is_refused_with_the_nearest_word() {
        assertThat(refusals("\"tripped\"", "\"triped\"")).containsExactly("notices.toml:8: web_hook.phone.only = triped: allowed done,"
                + " tripped, warned, interrupted, nearly_empty, check_in, because some ways are for some news. Did you mean"
                + " tripped? [R10]");
    }

    @Test
    void what_is_no_web_address_is_refused_and_so_is_one_with_a_password_in_it() {
        assertThat(refusals("https://hooks.example/abc", "ftp://hooks.example")).singleElement().asString()
                .startsWith("notices.toml:5: web_hook.phone.url = ftp://hooks.example: allowed https://HOST/…");
        assertThat(refusals("https://hooks.example/abc", "https://me:pw@hooks.example")).hasSize(1);
        assertThat(refusals("https://hooks.example/abc", "not an address")).hasSize(1);
    }

    @Test
    void a_secret_does_not_stand_in_the_file() {
        assertThat(refusals("token_env = \"HOOK_TOKEN\"", "token = \"abc\"")).singleElement().asString()
                .startsWith("notices.toml:7: web_hook.phone.token = abc: allowed one of ").contains("token_file");
    }

    @Test
    void two_places_for_one_secret_are_refused() {
        assertThat(refusals("token_env", "token_file = \"t\"\ntoken_env")).singleElement().asString()
                .contains("nobody could tell which of them holds");
    }

    private static final String MAIL = """
            check_in_min = 0

            [[mail]]
            name = "mailbox"
            server = "mail.example"
            port = 587
            security = "starttls"
            user = "me"
            password_file = "mail-password"
            from = "rig@hut.example"
            to = ["me@hut.example", "you@hut.example"]
            """;

    private static List<String> mailRefusals(String old, String replacement) {
        assertThat(MAIL).contains(old);
        return switch (read(MAIL.replace(old, replacement))) {
            case Read.Sound<NoticePlan> _ -> List.of();
            case Read.Refused<NoticePlan> refused -> refused.refusals().stream().map(Refusal::print).toList();
        };
    }

    @Test
    void a_mailbox_is_told_of_everything_and_shows_no_secret() {
        NoticePlan plan = ((Read.Sound<NoticePlan>) read(MAIL)).value();

        assertThat(plan.lines()).containsExactly("mailbox: e-mail to me@hut.example, you@hut.example by mail.example:587");
        assertThat(What.values()).allMatch(plan.routes().getFirst()::takes);
    }

    @Test
    void a_password_goes_over_no_wire_in_the_clear_but_inside_this_machine() {
        assertThat(mailRefusals("\"starttls\"", "\"none\"")).singleElement().asString()
                .contains("mail.mailbox.security = none", "a password in the clear is read on the way");
        assertThat(read(MAIL.replace("\"starttls\"", "\"none\"").replace("mail.example", "localhost")))
                .isInstanceOf(Read.Sound.class);
    }

    @Test
    void what_is_no_mail_address_is_refused() {
        assertThat(mailRefusals("\"you@hut.example\"", "\"you\"")).singleElement().asString().contains("mail.mailbox.to");
        assertThat(mailRefusals("rig@hut.example", "rig@hut.example, x")).hasSize(1);
        assertThat(mailRefusals("[\"me@hut.example\", \"you@hut.example\"]", "[]")).hasSize(1);
    }

    @Test
    void a_user_without_a_password_is_refused() {
        assertThat(mailRefusals("password_file = \"mail-password\"", "")).singleElement().asString()
                .contains("password_env is missing");
    }

    @Test
    void the_list_of_keys_names_both_ways() {
        List<String> names = KeyList.of(NoticeFile::keys).stream()
                .flatMap(t -> t.keys().stream().map(k -> t.place() + "." + k.name())).toList();

        assertThat(names).contains(".check_in_min", "web_hook.url", "web_hook.token_env", "web_hook.token_file", "mail.server",
                "mail.password_file", "mail.only");
    }

    @Test
    void silence_must_be_a_number_of_minutes_that_is_known() {
        assertThat(refusals("check_in_min = 30", "")).singleElement().asString().contains("check_in_min is missing",
                "silence is an alarm only where somebody knows how long is too long");
        assertThat(refusals("check_in_min = 30", "check_in_min = -1")).hasSize(1);
    }

    @Test
    void a_file_without_a_way_is_refused() {
        assertThat(read("check_in_min = 30")).isInstanceOf(Read.Refused.class);
    }
}
