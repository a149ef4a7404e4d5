package rigwarden.bench;

import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.chip.ina226.Ina226;
import rigwarden.chip.ina228.Ina228State;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Failure;

/** The INA226 and its two channels: it has neither a sum nor a clock worth knowing. */
final class PlainShunt implements ShuntSense {
    private final Ina226 chip;
    private final Table table;
    private final Channel current;
    private final Channel bus;
    private final Reference reference;

    PlainShunt(Ina226 chip, Rig rig, Table table) {
        this.chip = chip;
        this.table = table;
        current = rig.channel(Role.CURRENT);
        bus = rig.channel(Role.PACK_VOLTS);
        reference = new Reference(chip::reference, rig.scanNanos(), 0);
    }

    @Override
    public void read(long scan) {
        try {
            chip.check();
            reference.check(scan);
        } catch (BusFailure e) {
            fail(e.why());
            return;
        } catch (RuntimeException e) {
            fail(Failure.NONSENSE);
            return;
        }
        table.measure(current, chip::current);
        table.measure(bus, chip::bus);
    }

    private void fail(Failure why) {
        table.failed(current, why);
        table.failed(bus, why);
    }

    @Override
    public void readClock() {
        // nothing depends on this chip's clock
    }

    @Override
    public Optional<Ina228State> state() {
        return Optional.empty();
    }
}
