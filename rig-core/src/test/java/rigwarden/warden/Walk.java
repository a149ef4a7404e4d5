package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;

/** A warden and its guard on a walk over an obedient rig, under orders that it granted itself. */
final class Walk {
    /** After the start the bus has emptied, and every rule that waits for Off has waited. */
    private static final double START_SECONDS = 30;

    final Rig rig;
    final Warden warden;
    Guard guard;
    final List<Warning> told = new ArrayList<>();
    Orders inForce = Orders.OFF;
    long nanos;
    private long stageNanos;
    private long number;
    private ChipSum sum = ChipSum.NOTHING;
    /** Time from scan to scan; more than the rig's own where hours must pass. */
    long stride;

    Walk(Rig rig) {
        this(rig, new Warden(rig));
    }

    /** With another warden, for the proof that each of its rules is needed. */
    Walk(Rig rig, Warden warden) {
        this(rig, warden, Swing.NONE);
    }

    /** Going on where another had counted so much. */
    Walk(Rig rig, Warden warden, Swing before) {
        this.rig = rig;
        this.warden = warden;
        guard = warden.fresh(0, before);
        stride = rig.scanNanos();
    }

    /** The next scan of the obedient rig, before anything is changed in it. */
    Scans next() {
        nanos += stride;
        return new Scans(rig, nanos).obeying(inForce, nanos - stageNanos);
    }

    Verdict scan(Scans scans, Inbox inbox, Wish wish) {
        sum = sum.with(rig, scans);
        Scan scan = scans.summed(sum).scan(++number);
        Judged judged = warden.judge(guard, scan, inForce, inbox);
        Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, wish);
        if (!words(granted.orders()).equals(words(inForce))) {
            stageNanos = nanos;
        }
        guard = granted.guard();
        inForce = granted.orders();
        if (judged.verdict() instanceof Verdict.Healthy healthy) {
            told.addAll(healthy.warnings());
        }
        return judged.verdict();
    }

    private static String words(Orders orders) {
        return orders instanceof Orders.Energised on ? on.way() + " " + on.through() + " " + on.stage() : "off";
    }

    void healthy(double seconds, Wish wish) {
        healthy(seconds, wish, scans -> scans);
    }

    void healthy(double seconds, Wish wish, UnaryOperator<Scans> as) {
        long scans = Math.round(seconds * 1e9 / stride);
        for (long i = 0; i < scans; i++) {
            assertThat(scan(as.apply(next()), Inbox.EMPTY, wish)).isInstanceOf(Verdict.Healthy.class);
            assertThat(guard).as("a wish in order is granted").isInstanceOf(Guard.Watching.class);
        }
    }

    void start() {
        scan(next(), Inbox.of(Request.START), Wish.NOTHING);
        healthy(START_SECONDS, Wish.NOTHING);
    }

    /** As far as a stage through a device, with an order, for so long; the wish that keeps it there. */
    Wish reach(int through, Closing last, double amps, double seconds) {
        Wish wish = Wish.NOTHING;
        start();
        for (Closing stage : stages(last)) {
            wish = wish(through, stage, amps);
            healthy(stage == last ? seconds : 1, wish);
        }
        return wish;
    }

    private static List<Closing> stages(Closing last) {
        return switch (last) {
            case NO_LOAD -> List.of(Closing.NO_LOAD);
            case PRECHARGE -> List.of(Closing.PRECHARGE);
            case CONTACT -> List.of(Closing.PRECHARGE, Closing.CONTACT);
            case SILENCE -> List.of(Closing.PRECHARGE, Closing.CONTACT, Closing.SILENCE);
            case CURRENT -> List.of(Closing.PRECHARGE, Closing.CONTACT, Closing.CURRENT);
            case RELAY_ALONE, CONTACTOR_ALONE -> List.of(Closing.PRECHARGE, Closing.CONTACT, Closing.CURRENT, last);
        };
    }

    Wish wish(int through, Closing stage, double amps) {
        Device device = rig.devices().get(through);
        return new Wish.Path(device.charges() ? Way.CHARGE : Way.DISCHARGE, through, stage,
                works(stage) ? new Setpoint(amps, 0) : Setpoint.NONE);
    }

    private static boolean works(Closing stage) {
        return stage == Closing.CURRENT || stage == Closing.RELAY_ALONE || stage == Closing.CONTACTOR_ALONE;
    }

    /** That the last wish was turned into Off by a trip of this rule. */
    void refusedBy(int rule) {
        assertThat(inForce).isInstanceOf(Orders.Off.class);
        assertThat(guard).isInstanceOfSatisfying(Guard.Tripped.class,
                tripped -> assertThat(tripped.first().rule().number()).isEqualTo(rule));
    }
}
