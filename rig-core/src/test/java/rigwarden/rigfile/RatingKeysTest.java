package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.rig.RatedAt;
import rigwarden.rig.Rig;

/** Where the rating of the reference pack's cells holds, as its file says it. */
class RatingKeysTest {
    private static Read<Rig> with(String keys) {
        return Reference.pack("[shunt]", "[rating]\n" + keys + "\n[shunt]");
    }

    private static RatedAt rated(String keys) {
        return Reference.sound(with(keys)).value().cells().ratedAt();
    }

    @Test
    void without_the_table_and_without_a_key_the_usual_conditions_stand_and_are_told_apart() {
        RatedAt usual = Reference.sound(Reference.pack()).value().cells().ratedAt();

        assertThat(usual).isEqualTo(new RatedAt(25, 5, 0.05, 0.55, 2.5, OptionalDouble.empty(), false));
        assertThat(usual.words()).isEqualTo("at 25 ± 5 °C, 0.05…0.55 C, to 2.50 V, counted in Ah; the usual conditions, none being stated");
        assertThat(rated("")).isEqualTo(new RatedAt(25, 5, 0.05, 0.55, 2.5, OptionalDouble.empty(), true));
    }

    @Test
    void every_key_takes_the_place_of_a_usual_condition() {
        RatedAt own = rated("temperature_c = 20\nwithin_k = 2\nleast_rate_c = 0.18\nmost_rate_c = 0.22\ncut_off_v = 2.8\nrated_wh = 336");

        assertThat(own).isEqualTo(new RatedAt(20, 2, 0.18, 0.22, 2.8, OptionalDouble.of(336), true));
        assertThat(own.words()).isEqualTo("at 20 ± 2 °C, 0.18…0.22 C, to 2.80 V, counted in Wh");
    }

    @ParameterizedTest
    @CsvSource({"temperature_c = 90, rating.temperature_c", "within_k = 0, rating.within_k", "most_rate_c = 0.01, rating.most_rate_c",
        "cut_off_v = 4, rating.cut_off_v", "rated_wh = 0, rating.rated_wh", "warmth = 20, rating.warmth"})
    void what_is_out_of_its_range_missing_or_mistyped_is_refused_at_its_key(String line, String key) {
        List<Refusal> refusals = Reference.refusals(with(line));

        assertThat(refusals).singleElement().satisfies(refusal -> assertThat(refusal.print()).contains(key));
    }
}
