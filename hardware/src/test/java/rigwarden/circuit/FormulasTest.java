package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** Each formula of the guide against its source: a published figure, a figure of the trade, a simulation or a sum done another way. */
class FormulasTest {
    @Test
    void eight_cells_with_their_joints_give_eleven_kiloamperes_and_without_them_more() {
        double withJoints = 8 * 3.4 / (8 * 0.18e-3 + 16 * 0.05e-3 + 7 * 0.03e-3);

        assertThat(withJoints).isEqualTo(11_100, within(100.0));
        assertThat(Formulas.shortCircuitAmps(3.4, 0.18e-3)).isEqualTo(18_890, within(10.0));
    }

    @Test
    void the_adiabatic_constants_of_copper_are_those_that_the_standard_prints() {
        assertThat(Formulas.adiabatic(70, 160)).as("PVC").isEqualTo(Formulas.PVC, within(0.5));
        assertThat(Formulas.adiabatic(90, 250)).as("cross-linked polyethylene").isEqualTo(143, within(0.5));
        assertThat(Formulas.cableSquareMillimetres(1150, 1, 115)).isEqualTo(10, within(1e-9));
    }

    @Test
    void copper_bars_have_the_resistance_of_the_published_table() {
        assertThat(Formulas.copperOhms(1, 40, 20) * 1e6).isEqualTo(431.03, within(0.01));
        assertThat(Formulas.copperOhms(1, 100, 65) * 1e6).isEqualTo(202.90, within(0.01));
        assertThat(Formulas.copperOhms(0.1, 60, 20) * 100 * 1e3).as("mV at 100 A").isEqualTo(2.874, within(0.001));
    }

    @Test
    void free_bars_carry_what_the_published_vectors_say() {
        assertThat(Formulas.barAmps(20, 2)).isEqualTo(213.9, within(0.1));
        assertThat(Formulas.barAmps(20, 3)).isEqualTo(266.5, within(0.1));
        assertThat(Formulas.barAmps(30, 5)).isEqualTo(496.4, within(0.1));
    }

    /** The table of DIN 43671 is for 30 K; the rise goes with the current to the power of 1 ÷ 0.61. */
    @Test
    void free_bars_carry_within_a_twelfth_of_what_the_standard_measured() {
        double at30Kelvin = Math.pow(30 / 50.0, 0.61);

        assertThat(Formulas.barAmps(20, 5) * at30Kelvin).isEqualTo(274, within(274 / 12.0));
        assertThat(Formulas.barAmps(30, 5) * at30Kelvin).isEqualTo(380, within(380 / 12.0));
    }

    @Test
    void a_link_is_as_warm_in_its_middle_as_the_equation_of_heat_says_when_it_is_solved_in_steps() {
        double amps = 400;
        double metres = 0.1;
        int slices = 200;
        double step = metres / slices;
        double source = Math.pow(amps / 60e-6, 2) * Formulas.COPPER / Formulas.COPPER_HEAT * step * step;
        double[] kelvin = new double[slices + 1];

        for (int round = 0; round < 200_000; round++) {
            for (int slice = 1; slice < slices; slice++) {
                kelvin[slice] = (kelvin[slice - 1] + kelvin[slice + 1] + source) / 2;
            }
        }

        assertThat(Formulas.linkKelvin(amps, 60, metres)).isEqualTo(kelvin[slices / 2], within(0.001));
    }

    @Test
    void a_first_order_step_reaches_the_published_shares() {
        double noBleed = 1e9;

        assertThat(Formulas.prechargeTau(10, noBleed, 0.03)).isEqualTo(0.3, within(1e-6));
        assertThat(Formulas.prechargeSeconds(10, noBleed, 0.03)).as("95.0 % after three time constants").isEqualTo(0.9, within(0.002));
        assertThat(Formulas.bleedSeconds(10, 0.03)).as("5.0 % left after three").isEqualTo(0.9, within(0.002));
        assertThat(Formulas.prechargeSeconds(10, 100, 0.03)).as("a bleed that holds the bus at 91 %").isNaN();
    }

    @Test
    void the_simulated_bus_gets_there_when_the_formula_says_and_its_resistor_takes_the_energy_that_is_stored() throws Exception {
        Map<String, Double> seen = Ngspice.lines("""
                Vp1 p1 0 0
                Vpp pp 0 1
                Vp2 p2 0 0
                X1 p1 pp p2 bus load amps path vpack=29.2 rpack=1u rpre=10 farads=30m rbleed=220
                B1 watts 0 v = v(amps)*v(amps)*10
                .tran 1m 5 0 1m uic
                .meas tran reached when v(bus)=27.74 rise=1
                .meas tran joules integ v(watts) from=0 to=1.43""");

        assertThat(seen.get("reached")).isEqualTo(Formulas.prechargeSeconds(10, 220, 0.03), within(0.01));
        assertThat(seen.get("joules")).isEqualTo(Formulas.prechargeJoules(0.03, 29.2), within(1.0));
    }

    @Test
    void the_simulated_coil_s_current_has_gone_when_the_formula_says() throws Exception {
        Map<String, Double> seen = Ngspice.file(Ngspice.CIRCUITS.resolve("coil.cir"));

        assertThat(seen.get("slow_coil") - 0.5).isEqualTo(Formulas.coilSeconds(1.5, 48, 24, 0.7, 0.1), within(0.001));
        assertThat(seen.get("quick_coil") - 0.5).isEqualTo(Formulas.coilSeconds(1.5, 48, 24, 56.7, 0.1), within(0.0005));
        assertThat(seen.get("quick_volts")).isEqualTo(24 + 56.7, within(1.0));
    }

    /** The formula leaves out that the diode gives a little more charge as its current fades: a twentieth. */
    @Test
    void the_simulated_stage_holds_as_long_as_the_formula_says() throws Exception {
        Beats beats = Beats.none().then(0.1, 30, Beats.PERIOD);
        Map<String, Double> seen = Stage.asDrawn().run(beats, beats.last() + 1.2, """
                .meas tran full max v(hold) from=%1$f to=%2$f
                .meas tran peak max_at v(hold) from=%1$f to=%2$f
                .meas tran gone when v(feed)=12 fall=last""".formatted(beats.last(), beats.last() + 0.1));

        double lower = Formulas.threshold(100e3, 130e3, 150e3);
        double hold = Formulas.holdSeconds(487e3 / 2, 2.2e-6 + 4.7e-6 / 2, seen.get("full") / 12, lower);

        assertThat(lower).isEqualTo(0.411, within(0.001));
        assertThat(seen.get("gone") - seen.get("peak")).isEqualTo(hold, within(hold / 20));
    }

    /** The edges that the rig file of the bench of one cell states, which the simulated window is held to as well. */
    @Test
    void the_cell_window_s_dividers_stand_at_its_reference_where_the_rig_file_says() {
        assertThat(Formulas.windowVolts(2.5, 10e3, 20e3)).isEqualTo(3.75, within(0.0005));
        assertThat(Formulas.dividedVolts(2.5, 1740, 20e3)).isEqualTo(2.30, within(0.0005));
        assertThat(Formulas.dividedVolts(Formulas.windowVolts(2.5, 10e3, 20e3), 10e3, 20e3)).isEqualTo(2.5, within(1e-12));
    }

    @Test
    void a_shunt_of_75_mV_at_150_A_makes_eleven_watts_at_that() {
        assertThat(Formulas.watts(150, 0.0005)).isEqualTo(150 * 0.075, within(1e-9));
        assertThat(Formulas.fuseAmps(100)).as("a fuse carries four fifths of its rating for hours").isEqualTo(125, within(1e-9));
    }
}
