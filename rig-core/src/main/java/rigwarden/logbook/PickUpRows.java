package rigwarden.logbook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.run.Account;
import rigwarden.run.Bracket;
import rigwarden.run.PickUp;
import rigwarden.warden.Swing;

/** The rows of the table {@code about} that say where a run goes on which another run left off. */
final class PickUpRows {
    private static final String RUN = "continues run";
    private static final String STEP = "continues step";
    private static final String SPENT = "step spent ns";
    private static final String ACCOUNT = "step account";
    private static final String TOP = "step at ceiling ns";
    private static final String MEASURED = "measured Ah";
    private static final String ZERO = "probe zeros K";
    private static final String BROKEN = "broken off ns";
    private static final String AMPS = "broken off A";
    private static final String REST = "rest volts";
    private static final String SUM = "warden counted As";
    private static final String FILLED = "warden filled As";
    private static final String FILLED_AMPS = "warden filled A";
    private static final String EMPTIED = "warden emptied As";
    private static final String TAKEN = "warden taken As";

    private PickUpRows() {}

    static Map<String, String> rows(PickUp from) {
        Map<String, String> rows = new LinkedHashMap<>();
        Account account = from.before();
        rows.put(RUN, Integer.toString(from.run()));
        rows.put(STEP, Integer.toString(from.step()));
        rows.put(SPENT, Long.toString(from.spentNanos()));
        rows.put(ACCOUNT, words(List.of(account.nanos(), account.inNanoAmpSeconds(), account.outNanoAmpSeconds(),
                account.inMicroWattSeconds(), account.outMicroWattSeconds(), account.microVoltSeconds())));
        rows.put(TOP, Long.toString(from.topNanos()));
        rows.put(MEASURED, Double.toString(from.measuredAmpHours()));
        rows.put(ZERO, words(from.zeroKelvin()));
        rows.put(BROKEN, Long.toString(from.brokenNanos()));
        rows.put(AMPS, Double.toString(from.brokenAmps()));
        List<Double> volts = new ArrayList<>();
        from.rest().forEach(bracket -> volts.addAll(List.of(bracket.lowVolts(), bracket.highVolts())));
        rows.put(REST, words(volts));
        Swing swing = from.swing();
        rows.put(SUM, Double.toString(swing.ampSeconds()));
        rows.put(FILLED, words(swing.filled().stream().toList()));
        rows.put(FILLED_AMPS, Double.toString(swing.filledAmps()));
        rows.put(EMPTIED, words(swing.emptied().stream().toList()));
        rows.put(TAKEN, words(swing.taken().stream().toList()));
        return rows;
    }

    private static String words(List<? extends Number> numbers) {
        return String.join(" ", numbers.stream().map(String::valueOf).toList());
    }

    static Optional<PickUp> read(Map<String, String> rows) {
        if (!rows.containsKey(RUN)) {
            return Optional.empty();
        }
        long[] sums = Arrays.stream(words(rows, ACCOUNT)).mapToLong(Long::parseLong).toArray();
        double[] volts = numbers(rows, REST);
        List<Bracket> rest = new ArrayList<>();
        for (int cell = 0; cell < volts.length; cell += 2) {
            rest.add(new Bracket(volts[cell], volts[cell + 1]));
        }
        return Optional.of(new PickUp(Integer.parseInt(rows.get(RUN)), Integer.parseInt(rows.get(STEP)),
                Long.parseLong(rows.get(SPENT)), new Account(sums[0], sums[1], sums[2], sums[3], sums[4], sums[5]),
                Long.parseLong(rows.get(TOP)), Double.parseDouble(rows.get(MEASURED)),
                Arrays.stream(numbers(rows, ZERO)).boxed().toList(), Long.parseLong(rows.get(BROKEN)),
                Double.parseDouble(rows.get(AMPS)), rest,
                new Swing(Double.parseDouble(rows.get(SUM)), one(rows, FILLED), Double.parseDouble(rows.get(FILLED_AMPS)),
                        one(rows, EMPTIED), one(rows, TAKEN))));
    }

    private static Optional<Double> one(Map<String, String> rows, String key) {
        return Arrays.stream(numbers(rows, key)).boxed().findFirst();
    }

    private static String[] words(Map<String, String> rows, String key) {
        String row = rows.get(key);
        return row.isEmpty() ? new String[0] : row.split(" ", -1);
    }

    private static double[] numbers(Map<String, String> rows, String key) {
        return Arrays.stream(words(rows, key)).mapToDouble(Double::parseDouble).toArray();
    }
}
