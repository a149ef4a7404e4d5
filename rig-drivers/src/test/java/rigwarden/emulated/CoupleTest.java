package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class CoupleTest {
    // published (NIST Monograph 175 / IEC 60584-1, tables of types K, T, J, N, to a thousandth of a millivolt)
    @ParameterizedTest
    @CsvSource({
        "-50, -1.889, -1.819, -2.431, -1.269", "-25, -0.968, -0.940, -1.239, -0.646", "0, 0, 0, 0, 0",
        "10, 0.397, 0.391, 0.507, 0.261", "25, 1.000, 0.992, 1.277, 0.659", "50, 2.023, 2.036, 2.585, 1.340",
        "100, 4.096, 4.279, 5.269, 2.774", "200, 8.138, 9.288, 10.779, 5.913", "400, 16.397, 20.872, 21.848, 12.974"
    })
    void theVoltageIsThatOfThePublishedTable(double celsius, double k, double t, double j, double n) {
        assertThat(Couple.K.millivolts(celsius)).isCloseTo(k, within(0.0005));
        assertThat(Couple.T.millivolts(celsius)).isCloseTo(t, within(0.0005));
        assertThat(Couple.J.millivolts(celsius)).isCloseTo(j, within(0.0005));
        assertThat(Couple.N.millivolts(celsius)).isCloseTo(n, within(0.0005));
    }

    // published (NIST Monograph 175): type J changes its function at 760 °C, 42.919 mV
    @Test
    void typeJGoesOnSmoothlyWhereItsFunctionChanges() {
        assertThat(Couple.J.millivolts(760)).isCloseTo(42.919, within(0.0005));
        assertThat(Couple.J.millivolts(760 - 1e-9)).isCloseTo(Couple.J.millivolts(760), within(0.0005));
    }

    // published (project's check values 1.8, computed with the functions of Monograph 175)
    @ParameterizedTest
    @CsvSource({
        "K, 3.096, 25.0, 100.000", "K, 4.530, 24.5, 134.464", "K, -0.602, 25.0, 10.035", "T, 1.044, 25.0, 50.006",
        "T, 2.287, 24.0, 77.357", "J, 1.309, 25.0, 50.018", "N, 0.681, 25.0, 49.993", "K, 10.000, 22.0, 267.755"
    })
    void voltagesAddAndTemperaturesDoNot(Couple couple, double millivolts, double coldCelsius, double hotCelsius) {
        double found = couple.celsius(millivolts + couple.millivolts(coldCelsius));

        assertThat(found).isCloseTo(hotCelsius, within(0.0006));
    }

    @ParameterizedTest
    @EnumSource(Couple.class)
    void theTemperatureComesBackFromItsVoltageOverTheWholeRange(Couple couple) {
        double step = (couple.highestC - couple.lowestC) / 97;

        for (double celsius = couple.lowestC; celsius <= couple.highestC; celsius += step) {
            assertThat(couple.celsius(couple.millivolts(celsius))).isCloseTo(celsius, within(1e-5));
        }
    }

    @Test
    void aVoltageBeyondTheTypesRangeIsTakenForTheEndOfIt() {
        assertThat(Couple.T.celsius(25)).isEqualTo(400);
        assertThat(Couple.T.celsius(-7)).isEqualTo(-200);
    }
}
