package rigwarden.findings.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** Thermocouples against the tables of ITS-90. */
class ThermocoupleTest {
    private static final double LAST_DIGIT = 0.005;

    @ParameterizedTest
    @Mark(of = "thermocouple", standing = Standing.PUBLISHED, source = "NIST ITS-90 tables (SRD 60) and IEC 60584-1, mV to three decimals")
    @CsvSource({
        "-50,-1.889,-1.819,-2.431,-1.269",
        "-40,-1.527,-1.475,-1.961,-1.023",
        "-30,-1.156,-1.121,-1.482,-0.772",
        "-25,-0.968,-0.940,-1.239,-0.646",
        "-20,-0.778,-0.757,-0.995,-0.518",
        "-10,-0.392,-0.383,-0.501,-0.260",
        "0,0.000,0.000,0.000,0.000",
        "5,0.198,0.195,0.253,0.130",
        "10,0.397,0.391,0.507,0.261",
        "15,0.597,0.589,0.762,0.393",
        "20,0.798,0.790,1.019,0.525",
        "25,1.000,0.992,1.277,0.659",
        "30,1.203,1.196,1.537,0.793",
        "35,1.407,1.403,1.797,0.928",
        "40,1.612,1.612,2.059,1.065",
        "45,1.817,1.823,2.322,1.202",
        "50,2.023,2.036,2.585,1.340",
        "55,2.230,2.251,2.850,1.479",
        "60,2.436,2.468,3.116,1.619",
        "65,2.644,2.687,3.382,1.760",
        "70,2.851,2.909,3.650,1.902",
        "75,3.059,3.132,3.918,2.045",
        "80,3.267,3.358,4.187,2.189",
        "85,3.474,3.585,4.456,2.334",
        "90,3.682,3.814,4.726,2.480",
        "95,3.889,4.046,4.997,2.626",
        "100,4.096,4.279,5.269,2.774",
        "110,4.509,4.750,5.814,3.072",
        "120,4.920,5.228,6.360,3.374",
        "130,5.328,5.714,6.909,3.680",
        "140,5.735,6.206,7.459,3.989",
        "150,6.138,6.704,8.010,4.302",
        "175,7.140,7.977,9.392,5.098",
        "200,8.138,9.288,10.779,5.913",
        "250,10.153,12.013,13.555,7.597",
        "300,12.209,14.862,16.327,9.341",
        "350,14.293,17.819,19.090,11.136",
        "400,16.397,20.872,21.848,12.974"})
    void the_table_of_the_standard_is_met_to_its_last_digit(double celsius, double k, double t, double j, double n) {
        assertThat(Thermocouple.K.millivolts(celsius)).isCloseTo(k, within(0.0005001));
        assertThat(Thermocouple.T.millivolts(celsius)).isCloseTo(t, within(0.0005001));
        assertThat(Thermocouple.J.millivolts(celsius)).isCloseTo(j, within(0.0005001));
        assertThat(Thermocouple.N.millivolts(celsius)).isCloseTo(n, within(0.0005001));
    }

    /** The printed errors are of the inverse less the truth, in hundredths of a kelvin, rounded. */
    @ParameterizedTest
    @Mark(of = "thermocouple", standing = Standing.PUBLISHED, source = "NIST Monograph 175, A6.1 to A9.1: errors of the inverse functions, each range with its own")
    @CsvSource({
        "K,-50,-2.5,-0.02,0.04",
        "K,0,400,-0.05,0.04",
        "T,-50,-2.5,-0.02,0.04",
        "T,0,400,-0.03,0.03",
        "J,-50,-2.5,-0.05,0.03",
        "J,0,400,-0.04,0.04",
        "N,-50,-2.5,-0.02,0.03",
        "N,0,400,-0.02,0.03"})
    void the_inverse_polynomials_keep_within_their_published_errors(String letter, double from, double to, double lowest, double highest) {
        Thermocouple type = named(letter);
        for (double celsius = from; celsius <= to; celsius += 2.5) {
            double error = type.celsiusByPolynomial(type.millivolts(celsius)) - celsius;

            assertThat(error).as("at %s", celsius).isBetween(lowest - LAST_DIGIT, highest + LAST_DIGIT);
        }
    }

    @Test
    void newton_finds_each_temperature_again() {
        for (Thermocouple type : Thermocouple.ALL) {
            for (double celsius = -50; celsius <= 400; celsius += 2.5) {
                assertThat(type.celsius(type.millivolts(celsius))).as("at %s", celsius).isCloseTo(celsius, within(1e-6));
            }
        }
    }

    private static Thermocouple named(String letter) {
        return switch (letter) {
            case "K" -> Thermocouple.K;
            case "T" -> Thermocouple.T;
            case "J" -> Thermocouple.J;
            case String _ -> Thermocouple.N;
        };
    }

    @ParameterizedTest
    @Mark(of = "thermocouple", standing = Standing.WORKED, source = "NIST Monograph 175, section 1: the cold junction is added as emf")
    @CsvSource({
        "K,3.096,25.0,100.000,100.882",
        "K,4.530,24.5,134.464,134.986",
        "K,0.000,23.5,23.500,23.500",
        "K,-0.602,25.0,10.035,9.567",
        "T,1.044,25.0,50.006,51.290",
        "T,2.287,24.0,77.357,79.820",
        "J,1.309,25.0,50.018,50.577",
        "N,0.681,25.0,49.993,50.860",
        "K,10.000,22.0,267.755,268.222",
        "K,1.020,31.25,56.079,56.729"})
    void the_cold_junction_is_added_in_millivolts_and_never_in_degrees(String letter, double measured, double cold, double hot, double wrong) {
        Thermocouple type = named(letter);

        double found = type.celsius(measured, cold);

        assertThat(found).isCloseTo(hot, within(0.0006));
        if (measured != 0) {
            assertThat(type.celsius(measured) + cold).isCloseTo(wrong, within(0.05));
        }
    }

    @Test
    @Mark(of = "thermocouple", standing = Standing.WORKED, source = "both branches of type K at 0 °C; the split of type J is 42.919 mV")
    void branches_meet_where_they_must() {
        assertThat(Thermocouple.K.millivolts(0)).isEqualTo(0);
        assertThat(Thermocouple.K.millivolts(1e-9)).isCloseTo(0, within(1e-8));
        assertThat(Thermocouple.J.millivolts(760)).isCloseTo(42.919, within(0.0005));
        assertThat(Thermocouple.J.celsius(42.917)).isCloseTo(759.97, within(0.02));
    }

    @Test
    void beyond_its_range_nothing_is_said() {
        assertThatThrownBy(() -> Thermocouple.T.millivolts(401)).hasMessageContaining("outside");
        assertThatThrownBy(() -> Thermocouple.K.celsius(60)).hasMessageContaining("outside");
    }
}
