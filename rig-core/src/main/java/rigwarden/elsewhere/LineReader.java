package rigwarden.elsewhere;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

/** Makes numbers of records by a map; what is no number is named and left out. */
final class LineReader implements CsvLines.Taking {
    private final LogMap map;
    private final Consumer<LogLine> on;
    private final Consumer<Remark> said;
    private final List<LogMap.Column> columns = new ArrayList<>();
    private int[] places = {};
    private int step = -1;
    private int time = -1;
    private int width;
    private final double[] lastCount = new double[2];
    private final double[] countedBefore = new double[2];
    private long lines;

    LineReader(LogMap map, Consumer<LogLine> on, Consumer<Remark> said) {
        this.map = map;
        this.on = on;
        this.said = said;
        columns.add(map.current().column());
        map.counted().ifPresent(counted -> columns.addAll(List.of(counted.in(), counted.out())));
        map.columns().forEach(one -> columns.add(one.column()));
    }

    @Override
    public void heading(List<String> names) {
        List<String> asked = new ArrayList<>(columns.stream().map(LogMap.Column::name).distinct().toList());
        asked.add(map.time().name());
        map.stretches().needs().ifPresent(asked::add);
        CsvLines.need(names, asked, words -> {
            throw new LogUnreadable(words);
        });
        width = names.size();
        time = names.indexOf(map.time().name());
        step = map.stretches().needs().map(names::indexOf).orElse(-1);
        places = columns.stream().mapToInt(column -> names.indexOf(column.name())).toArray();
    }

    @Override
    public void line(CsvRecord record) {
        lines++;
        long line = record.getStartingLineNumber();
        if (record.getFieldCount() != width) {
            say(line, Fault.WRONG_WIDTH, "it has %d fields where the heading has %d", record.getFieldCount(), width);
            return;
        }
        double seconds = number(record.getField(time), map.time());
        if (Double.isNaN(seconds)) {
            say(line, Fault.NO_TIME, "its %s is \"%s\"", map.time().name(), record.getField(time));
            return;
        }
        boolean counted = map.counted().isPresent();
        double[] values = new double[columns.size() - (counted ? 1 : 0)];
        long nonsense = 0;
        double[] counts = new double[2];
        for (int i = 0; i < places.length; i++) {
            String field = record.getField(places[i]);
            double value = number(field, columns.get(i));
            boolean count = counted && (i == 1 || i == 2);
            int channel = counted && i > 1 ? i - 1 : i;
            if (Double.isNaN(value)) {
                nonsense |= wrong(line, field, columns.get(i)) ? 1L << channel : 0;
            }
            if (count) {
                counts[i - 1] = value;
            } else {
                values[channel] = value;
            }
        }
        if (counted) {
            values[1] = count(line, 0, counts[0]) - count(line, 1, counts[1]);
        }
        on.accept(new LogLine(line, seconds, step < 0 ? "" : record.getField(step).strip(), values, nonsense));
    }

    /** A count that falls has begun anew. */
    private double count(long line, int which, double coulombs) {
        if (Double.isNaN(coulombs)) {
            return Double.NaN;
        }
        if (coulombs < lastCount[which]) {
            countedBefore[which] += lastCount[which];
            say(line, Fault.COUNT_BEGAN_ANEW, "the count of %s falls from %.6f Ah to %.6f Ah", columns.get(1 + which).name(),
                    lastCount[which] / 3600, coulombs / 3600);
        }
        lastCount[which] = coulombs;
        return countedBefore[which] + coulombs;
    }

    /** In our unit, within what the column may have; NaN else. */
    private double number(String field, LogMap.Column column) {
        double value = column.zero() + column.unit() * plain(field);
        return value >= column.least() && value <= column.most() ? value : Double.NaN;
    }

    private double plain(String field) {
        String text = map.layout().decimalComma() ? field.strip().replace(',', '.') : field.strip();
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            if ((sign < '0' || sign > '9') && sign != '.' && sign != '-' && sign != '+' && sign != 'e' && sign != 'E') {
                return Double.NaN;
            }
        }
        try {
            return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
        } catch (NumberFormatException _) {
            return Double.NaN;
        }
    }

    /** Names what is no reading; whether the field was filled. */
    private boolean wrong(long line, String field, LogMap.Column column) {
        if (field.isBlank()) {
            say(line, Fault.EMPTY, "%s is empty", column.name());
            return false;
        }
        if (Double.isNaN(plain(field))) {
            say(line, Fault.UNREADABLE, "%s is \"%s\", which is no number", column.name(), field);
        } else {
            say(line, Fault.OVERFLOW, "%s is %s, beyond what the map allows", column.name(), field.strip());
        }
        return true;
    }

    private void say(long line, Fault fault, String words, Object... with) {
        said.accept(new Remark(line, fault, String.format(Locale.ROOT, words, with)));
    }

    /** Lines after the heading, whatever became of them. */
    long lines() {
        return lines;
    }
}
