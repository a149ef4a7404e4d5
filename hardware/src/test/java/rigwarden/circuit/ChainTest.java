package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The whole chain, with its worst coils: a fifth more inductance than drawn, let go at a tenth of the nominal current, a tenth less
 * copper and 30 K colder; and, where it is the longer, with a supply a tenth too high.
 */
class ChainTest {
    private static final String WORST = "lk1=1.8 release=0.1 copper=0.79";
    private static final String HIGH = "26.4";
    private static final String CHARGING = "vdev=28.8 rdev=0.11";
    private static final double OPENS_WITHIN = 0.05;

    /** The contact_lag_s of both reference rigs, s. */
    private static final double CONTACT_LAG = 0.03;

    @Test
    void each_contact_of_the_loop_and_a_dead_supply_open_both_elements_within_fifty_milliseconds() throws Exception {
        for (String cause : List.of("estop", "thermal", "smoke", "window", "vs")) {
            for (String way : List.of("", CHARGING)) {
                for (String supply : cause.equals("estop") ? List.of("24", HIGH) : List.of(HIGH)) {
                    Map<String, Double> seen = stopped(new Chain().with("vs", supply).falls(cause, 0).parameters(WORST).parameters(way)
                            .measure("k1", "when v(p1)=0.1 fall=last").measure("k2", "when v(p2)=0.1 fall=last")
                            .measure("horn", "find v(horn) at=6"), Chain.EVENT + OPENS_WITHIN);

                    print(cause + (way.isEmpty() ? ", discharge, " : ", charge, ") + supply + " V", seen, Chain.EVENT);
                    assertThat(seen.get("k1") - Chain.EVENT).isBetween(0.001, CONTACT_LAG);
                    assertThat(seen.get("k2") - Chain.EVENT).isBetween(0.001, CONTACT_LAG);
                }
            }
        }
    }

    @Test
    void one_element_that_sticks_leaves_the_current_stopped_by_the_other() throws Exception {
        for (String weld : List.of("welds1=3.3", "welds2=3.3", "weldsp=2", "weldsh=3.3", "weldsl=3.3")) {
            for (String way : List.of("", CHARGING)) {
                Map<String, Double> loop = stopped(new Chain().with("vs", HIGH).falls("estop", 0).parameters(WORST).parameters(weld).parameters(way),
                        Chain.EVENT + OPENS_WITHIN);
                Map<String, Double> beats = stopped(new Chain().with("vs", HIGH).beats(Chain.UNTIL_EVENT).parameters(WORST).parameters(weld).parameters(way),
                        Chain.UNTIL_EVENT.last() + 1 + OPENS_WITHIN);

                System.out.printf(Locale.ROOT, "chain, %-10s %-10s before %6.1f A; after the loop opened %.3f A, after the beats ended %.3f A%n", weld,
                        way.isEmpty() ? "discharge" : "charge", loop.get("before"), loop.get("after"), beats.get("after"));
            }
        }
    }

    @Test
    void a_controller_that_hangs_with_its_orders_on_loses_the_current_and_the_sounder_says_so() throws Exception {
        double last = Chain.UNTIL_EVENT.last();
        Map<String, Double> seen = stopped(new Chain().with("vs", HIGH).beats(Chain.UNTIL_EVENT).parameters(WORST)
                .measure("k1", "when v(p1)=0.1 fall=last").measure("k2", "when v(p2)=0.1 fall=last")
                .measure("quiet", "max v(horn) from=1 to=" + Chain.EVENT).measure("horn", "min v(horn) from=" + (last + 1.1) + " to=6"),
                last + 1 + OPENS_WITHIN);

        print("beats end", seen, last);
        assertThat(seen.get("k1") - last).isBetween(0.6, 1 + CONTACT_LAG);
        assertThat(seen.get("quiet")).isLessThan(0.1);
        assertThat(seen.get("horn")).isGreaterThan(8.5);
    }

    @Test
    void the_sounder_sounds_with_everything_else_dead_and_on_the_controller_s_word_and_is_still_when_not_armed() throws Exception {
        Map<String, Double> dead = new Chain().falls("vs", 0).beats(Chain.UNTIL_EVENT).measure("horn", "min v(horn) from=4.6 to=6").run();
        Map<String, Double> called = new Chain().with("call", "pwl(0 0 3.5 0 3.5001 1)").measure("horn", "min v(horn) from=3.6 to=6").run();
        Map<String, Double> unarmed = new Chain().falls("vs", 0).with("arm", "0").measure("horn", "max v(horn) from=0 to=6").run();

        assertThat(dead.get("horn")).isGreaterThan(8.5);
        assertThat(called.get("horn")).isGreaterThan(8.5);
        assertThat(unarmed.get("horn")).isLessThan(0.1);
    }

    @Test
    void a_bimetal_that_cools_or_an_emergency_stop_that_is_pulled_out_closes_nothing() throws Exception {
        for (String contact : List.of("thermal", "estop", "smoke", "window", "vs")) {
            stopped(new Chain().falls(contact, 0.5).measure("feed", "max v(feed) from=3.55 to=6"), Chain.EVENT + OPENS_WITHIN);
        }
        Map<String, Double> seen = new Chain().falls("thermal", 0.02).measure("feed", "max v(feed) from=3.55 to=6").run();

        assertThat(seen.get("feed")).as("coil feed after a break of 20 ms, V").isLessThan(1);
    }

    @Test
    void the_reset_button_starts_nothing_while_beats_and_orders_go_on_and_works_once_they_are_still() throws Exception {
        String late = "pwl(0 0 0.05 0 0.0501 1 0.15 1 0.1501 0 5 0 5.0001 1 5.2 1 5.2001 0)";
        Map<String, Double> going = new Chain().falls("estop", 0.5).with("reset", late).measure("feed", "max v(feed) from=3.55 to=6").run();
        Beats paused = Chain.UNTIL_EVENT.then(2, 6, Beats.PERIOD);
        Map<String, Double> still = new Chain().falls("estop", 0.5).with("reset", late).beats(paused)
                .measure("feed", "max v(feed) from=3.55 to=5.3").measure("again", "find v(feed) at=6").run();

        assertThat(going.get("feed")).as("coil feed after a reset while beats go on, V").isLessThan(1);
        assertThat(still.get("feed")).as("coil feed before the beats begin anew, V").isLessThan(1);
        assertThat(still.get("again")).as("coil feed once they have, V").isGreaterThan(20);
    }

    @Test
    void a_reset_finds_a_contactor_that_is_welded() throws Exception {
        Map<String, Double> seen = new Chain().parameters("welds1=-1").with("order2", "0").measure("feed", "max v(feed) from=0 to=6").run();

        assertThat(seen.get("feed")).as("coil feed with K1 welded before the reset, V").isLessThan(1);
    }

    @Test
    void a_reset_finds_a_heartbeat_relay_that_is_welded_and_the_other_one_sounds() throws Exception {
        Map<String, Double> seen = new Chain().parameters("weldsh=-1").with("order2", "0").beats(Beats.none())
                .measure("feed", "max v(feed) from=0 to=6").measure("horn", "min v(horn) from=1 to=6").run();

        assertThat(seen.get("feed")).as("coil feed with KHa welded before the reset, V").isLessThan(1);
        assertThat(seen.get("horn")).isGreaterThan(8.5);
    }

    @Test
    void a_coil_with_a_plain_diode_is_too_slow_and_one_with_a_zener_is_not() throws Exception {
        Map<String, Double> seen = Ngspice.file(Ngspice.CIRCUITS.resolve("coil.cir"));
        double plain = seen.get("slow_opens") - 0.5;
        double zener = seen.get("quick_opens") - 0.5;

        System.out.printf(Locale.ROOT, "coil of K1: plain diode opens after %.1f ms, with a zener of 56 V after %.1f ms (%.0f V at its transistor)%n",
                plain * 1e3, zener * 1e3, seen.get("quick_volts"));
        assertThat(plain).isGreaterThan(OPENS_WITHIN);
        assertThat(zener).isLessThan(CONTACT_LAG);
    }

    @Test
    void the_deck_that_is_kept_for_looking_at_runs_as_it_says() throws Exception {
        Map<String, Double> seen = Ngspice.file(Ngspice.CIRCUITS.resolve("chain.cir"));

        assertThat(seen.get("amps_before")).isGreaterThan(20);
        assertThat(seen.get("amps_after")).isLessThan(1);
    }

    /** Runs it, and sees that a current flowed before and none over 1 A does from then on, whichever its direction. */
    private static Map<String, Double> stopped(Chain chain, double from) throws Exception {
        Map<String, Double> seen = chain.measure("before", "find v(amps) at=" + (Chain.EVENT - 0.1))
                .measure("most", "max v(amps) from=" + from + " to=6").measure("least", "min v(amps) from=" + from + " to=6").run();
        seen.put("after", Math.max(seen.get("most"), -seen.get("least")));
        assertThat(Math.abs(seen.get("before"))).as("current before, A").isGreaterThan(10);
        assertThat(seen.get("after")).as("current after, A").isLessThan(1);
        return seen;
    }

    private static void print(String cause, Map<String, Double> seen, double since) {
        System.out.printf(Locale.ROOT, "chain, %-20s K1 opens after %.1f ms, the second element after %.1f ms; sounder %.1f V%n", cause,
                (seen.get("k1") - since) * 1e3, (seen.get("k2") - since) * 1e3, seen.get("horn"));
    }
}
