package rigwarden.findings.trace;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Account;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * The run machine's sums of each step, counted anew from scans that were read anew: by the trapezoid, from one scan in which current and
 * all cells are there to the next, as the machine counts them.
 */
public final class Recount {
    private final Channel current;
    private final List<Channel> cells;
    private Account account = Account.EMPTY;
    private long nanos;
    private double amps;
    private double watts;
    private double volts;

    public Recount(Rig rig) {
        current = rig.channel(Role.CURRENT);
        cells = rig.channels(Role.CELL_VOLTS);
    }

    /** The next row in order, with the sums of a step that ends in it put in the place of the stored ones. */
    public Row take(Row row) {
        count(row.scan());
        List<StepMark> marks = new ArrayList<>();
        for (StepMark mark : row.marks()) {
            switch (mark) {
                case StepMark.Begun begun -> {
                    account = Account.EMPTY;
                    marks.add(begun);
                }
                case StepMark.Laid laid -> marks.add(laid);
                case StepMark.Over over -> marks.add(new StepMark.Over(over.by(), over.settled(), account));
            }
        }
        return new Row(row.scan(), marks);
    }

    /** Sums of the step that runs, until now. */
    public Account account() {
        return account;
    }

    private void count(Scan scan) {
        if (!(scan.readings().get(current.index()) instanceof Reading.Valid now)) {
            return;
        }
        double sum = 0;
        for (Channel cell : cells) {
            if (!(scan.readings().get(cell.index()) instanceof Reading.Valid valid)) {
                return;
            }
            sum += valid.value();
        }
        double power = now.value() * sum;
        account = account.plus(scan.nanos() - nanos, (amps + now.value()) / 2, (watts + power) / 2, (volts + sum) / 2);
        nanos = scan.nanos();
        amps = now.value();
        watts = power;
        volts = sum;
    }
}
