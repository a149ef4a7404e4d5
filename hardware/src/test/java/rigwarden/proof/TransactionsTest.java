package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rigwarden.emulated.Rehearsal;
import rigwarden.emulated.Traffic;
import rigwarden.warden.Orders;

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
    /** Six probes, each in every second scan: status, hot junction, both configuration registers in; the flag cleared. */
    private static final long PROBE_READS = 6 / 2 * 4;
    private static final long PROBE_WRITES = 6 / 2;
    /** Every hundred scans: who the shunt monitor is and its calibration, the threshold of one converter, who each of six probes is. */
    private static final long REFERENCE_READS = 3 + 1 + 6;
    private static final long REFERENCE_SCANS = 100;
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
        long edges = board.registerReads - reads - (SHUNT_READS + INPUT_READS + PROBE_READS) * SCANS
                - REFERENCE_READS * SCANS / REFERENCE_SCANS;
        assertThat(edges).as("polls for clock edges").isBetween(10L, edgesAtMost(SCANS));
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

    @Test
    void a_whole_night_costs_what_the_table_says() {
        long[] beats = {0};
        Rehearsal rehearsal = Bench.rehearsal(1).copy((_, _, orders, _) -> {
            if (orders instanceof Orders.Energised on && on.beats()) {
                beats[0]++;
            }
        });
        Traffic board = rehearsal.rig().emulatedBoard().traffic();
        long scans = 0;
        long claims = board.gpioWrites;
        while (!rehearsal.over()) {
            rehearsal.scan();
            scans++;
        }
        long levels = board.gpioWrites - claims - beats[0];
        long edges = board.registerReads - (SHUNT_READS + INPUT_READS + PROBE_READS) * scans
                - REFERENCE_READS * (scans / REFERENCE_SCANS);
        System.out.printf("%d scans: %d lines in, %d beats, %d other levels, %d registers out, %d in, of these %d for clock edges%n",
                scans, board.gpioReads, beats[0], levels, board.registerWrites, board.registerReads, edges);

        assertThat(board.gpioReads).as("lines in").isEqualTo(LINE_READS * scans);
        assertThat(levels).as("five paths: pre-charge, contactor and one relay up and down; the heartbeat down where it was up")
                .isBetween(5 * 6L, 5 * 7L);
        assertThat(board.registerWrites).as("registers out, all six probes in every second scan")
                .isEqualTo(INPUT_WRITES * scans + 2 * PROBE_WRITES * (scans / 2));
        assertThat(edges).as("polls for clock edges").isBetween(scans / 600, edgesAtMost(scans));
    }

    /** Once a minute at most two conversion cycles of 33.7 ms, polled by 0.25 ms. */
    private static long edgesAtMost(long scans) {
        return Math.round((scans / 600.0 + 2) * (2 * 33.7 / 0.25 + 2));
    }
}
