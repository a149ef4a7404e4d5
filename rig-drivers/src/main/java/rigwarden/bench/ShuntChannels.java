package rigwarden.bench;

import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.chip.ina228.Ina228;
import rigwarden.chip.ina228.Ina228State;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Failure;

/** The INA228 and its four channels. */
final class ShuntChannels implements ShuntSense {
    private final Ina228 chip;
    private final Table table;
    private final Channel current;
    private final Channel charge;
    private final Channel bus;
    private final Channel ratio;
    private final Reference reference;
    private boolean sound;

    ShuntChannels(Ina228 chip, Rig rig, Table table) {
        this.chip = chip;
        this.table = table;
        current = rig.channel(Role.CURRENT);
        charge = rig.channel(Role.ACCUMULATED);
        bus = rig.channel(Role.PACK_VOLTS);
        ratio = rig.channel(Role.CLOCK_RATIO);
        reference = new Reference(chip::reference, rig.scanNanos(), 0);
    }

    @Override
    public void read(long scan) {
        sound = false;
        try {
            chip.check();
            reference.check(scan);
            sound = true;
        } catch (BusFailure e) {
            fail(e.why());
            return;
        } catch (RuntimeException e) {
            fail(Failure.NONSENSE);
            return;
        }
        table.measure(current, chip::current);
        table.measure(charge, chip::charge);
        table.measure(bus, chip::bus);
    }

    private void fail(Failure why) {
        table.failed(current, why);
        table.failed(charge, why);
        table.failed(bus, why);
    }

    @Override
    public Optional<Ina228State> state() {
        return Optional.of(chip.state());
    }

    /** It may wait for the chip once a minute. */
    @Override
    public void readClock() {
        table.measure(ratio, () -> {
            if (sound) {
                learn();
            }
            return chip.ratioCode();
        });
    }

    /** A missed edge costs nothing; when they stay away the ratio itself says so. */
    private void learn() {
        try {
            chip.learnClock();
        } catch (BusFailure e) {
            sound = false;
        }
    }
}
