package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rigwarden.emulated.Rehearsal;
import rigwarden.emulated.Traffic;

/**
 * The provider's count of transactions against a table written from the data sheets' way of reading, independent of the
 * drivers: what each part costs a scan.
 */
class TransactionsTest {
    private static final int SCANS = 10_000;

    /** Shunt monitor: configuration, diagnosis, current, charge, bus. */
    private static final long SHUNT_READS = 5;
    /** Each of two converter inputs: configuration word out; configuration and conversion in. */
    private static final long INPUT_WRITES = 2;
    private static final long INPUT_READS = 2 * 2;
    /** Six probes, each in every second scan: status, hot junction, configuration in; the flag cleared. */
    private static final long PROBE_READS = 6 / 2 * 3;
    private static final long PROBE_WRITES = 6 / 2;
    /** Loop, coil supply, feedback, arm. */
    private static final long LINE_READS = 4;

    @Test
    void ten_thousand_scans_at_rest_cost_what_the_table_says_and_the_clock_edges_besides() {
        Rehearsal rehearsal = Bench.rehearsal(1);
        Bench.until(rehearsal, () -> rehearsal.step() == 2);
        Bench.seconds(rehearsal, 30);
        Traffic board = rehearsal.rig().emulatedBoard().traffic();
        long reads = board.registerReads;
        long writes = board.registerWrites;
        long lineReads = board.gpioReads;
        long lineWrites = board.gpioWrites;

        for (int i = 0; i < SCANS; i++) {
            rehearsal.scan();
        }

        assertThat(board.gpioReads - lineReads).as("lines in").isEqualTo(LINE_READS * SCANS);
        assertThat(board.gpioWrites - lineWrites).as("idle is silent").isZero();
        assertThat(board.registerWrites - writes).as("registers out").isEqualTo((INPUT_WRITES + PROBE_WRITES) * SCANS);
        long edges = board.registerReads - reads - (SHUNT_READS + INPUT_READS + PROBE_READS) * SCANS;
        double minutes = SCANS / 600.0;
        System.out.printf("%d reads of the ready flag for clock edges in %.1f minutes%n", edges, minutes);
        assertThat(edges).as("polls for clock edges: once a minute, at most two conversion cycles of 33.7 ms by 0.25 ms")
                .isBetween(10L, Math.round((minutes + 2) * (2 * 33.7 / 0.25 + 2)));
    }

    @Test
    void with_current_flowing_a_scan_costs_one_beat_more() {
        Rehearsal rehearsal = Bench.rehearsal(1);
        Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 1));
        Bench.seconds(rehearsal, 10);
        Traffic board = rehearsal.rig().emulatedBoard().traffic();
        long lineWrites = board.gpioWrites;

        for (int i = 0; i < 1000; i++) {
            rehearsal.scan();
        }

        assertThat(board.gpioWrites - lineWrites).isEqualTo(1000);
    }
}
