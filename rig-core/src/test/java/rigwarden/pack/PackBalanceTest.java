package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import org.junit.jupiter.api.Test;

/** First law for a pack of plain cells that cannot lose heat, with charger, inverter, protection and balancer at work. */
class PackBalanceTest {
    private static final int CELLS = 8;
    private static final double EMF = 3.3;
    private static final double OHMS = 0.5e-3;
    private static final double AMP_HOURS = 100;
    private static final double FUSE = 0.2e-3;
    private static final double SWITCH = 1e-3;
    private static final double START = 22;

    @Test
    void an_hour_of_the_charger_balances() {
        World world = sealed(0);
        Rigs.join(world, Line.source(0));

        Rigs.advance(world, 3600);

        assertThat(world.coulombs()).isCloseTo(20 * 3600 - 300, within(1.0));
        assertBalance(world, 0);
    }

    @Test
    void an_hour_of_the_inverter_balances_and_is_its_power() {
        World world = sealed(0);
        Rigs.join(world, Line.sink(0));

        Rigs.advance(world, 3600);

        assertBalance(world, 0);
        double amps = world.sinkAmps(0);
        double joules = (1500 / 0.9 + amps * amps * 2e-3) * 3600;
        assertThat(-world.busJoules()).isCloseTo(joules, within(1e-6 * joules));
    }

    @Test
    void charging_and_heating_by_turns_with_a_balancer_balances() {
        World world = sealed(0.2);
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        for (int turn = 0; turn < 4; turn++) {
            Rigs.relay(world, Line.source(0), true);
            Rigs.advance(world, 1800);
            Rigs.relay(world, Line.source(0), false);
            Rigs.relay(world, Line.sink(0), true);
            Rigs.advance(world, 300);
            Rigs.relay(world, Line.sink(0), false);
        }

        assertThat(world.coulombsIn()).isGreaterThan(130_000);
        assertThat(world.coulombsOut()).isGreaterThan(70_000);
        assertBalance(world, 0.2);
    }

    /**
     * What came over the bus = charge at the electromotive force + warmth of all nodes + heat of fuse and protection,
     * which lie outside + what the balancer took at the studs. ∫I² follows from the energy at the studs.
     */
    private static void assertBalance(World world, double balanceAmps) {
        double seconds = world.nanos() / (double) Rigs.SECOND;
        double coulombs = world.coulombs();
        double gone = balanceAmps * seconds;
        double squareAmpSeconds = (world.joules() / CELLS - EMF * coulombs + OHMS * balanceAmps * coulombs) / OHMS;
        double stored = 0;
        for (int k = 0; k < CELLS; k++) {
            stored += EMF * (world.charge(k) - 0.5) * AMP_HOURS * 3600;
        }
        double balancer = CELLS * balanceAmps * (EMF * seconds + OHMS * (coulombs - gone));
        double outside = (FUSE + SWITCH) * squareAmpSeconds;

        double sum = stored + warmth(world) + outside + balancer;

        double all = EMF * CELLS * (world.coulombsIn() + world.coulombsOut());
        assertThat(sum).isCloseTo(world.busJoules(), within(1e-6 * all));
        assertThat(warmth(world)).as("not all too little to tell").isGreaterThan(1e-3 * all);
        assertThat(stored).isCloseTo(CELLS * EMF * (coulombs - gone), within(1e-9 * all));
    }

    private static World sealed(double balanceAmps) {
        CellParameters cell = CellParameters.plain(AMP_HOURS, EMF, OHMS);
        PathParameters path = PathParameters.bench().withBus(4.7, 1e-12, 1e15).withLeads(1e-3, 2e-3)
                .withSupplies(new Supply.Charger(20, 30, 40, 2, false, 0))
                .withLoads(new Load.Inverter(1500, 0.9, 21, 24, 0, 0, 0.5, 0, 0));
        double[] half = {0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5};
        return new World(WorldParameters.inSeries(CELLS).withCells(Collections.nCopies(CELLS, cell)).withPath(path)
                .withWarmth(WarmthParameters.sealed())
                .withProtection(new Protection(4, 2, 3.9, 2, 2, 2.5, SWITCH, 0, balanceAmps)), half);
    }

    private static double warmth(World world) {
        double joules = 60 * (world.celsius(Node.SHUNT) - START) + 150 * (world.celsius(Node.CONTACTOR) - START);
        for (int k = 0; k < CELLS; k++) {
            joules += 2100 * (world.celsius(Node.body(k)) - START);
            joules += 40 * (world.celsius(Node.stud(k, true)) + world.celsius(Node.stud(k, false)) - 2 * START);
        }
        for (int i = 0; i <= CELLS; i++) {
            joules += 30 * (world.celsius(Node.link(i)) - START);
        }
        return joules;
    }
}
