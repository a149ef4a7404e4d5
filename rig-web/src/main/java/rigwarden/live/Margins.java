package rigwarden.live;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;
import rigwarden.warden.Closing;
import rigwarden.warden.Orders;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;
import rigwarden.warden.Way;

/**
 * How far each reading is from the warden's limits, as a share of the way from a usual value to the limit. It judges
 * nothing: only the warden does. Rates of rise are not in it.
 */
final class Margins {
    /** Voltage of a cell between charge and discharge, V: from here the way to either limit is counted. */
    private static final double USUAL_CELL_V = 3.30;
    private static final double USUAL_C = 22;
    private static final double ORDERED = 1.1;

    private final Rig rig;
    private final List<Nearest> found = new ArrayList<>();
    private Scan scan = new Scan(0, 0, List.of());

    Margins(Rig rig) {
        this.rig = rig;
    }

    /** The nearest limit of a scan under these orders; none when nothing that is limited can be read. */
    Optional<Nearest> nearest(Scan now, Orders orders) {
        scan = now;
        found.clear();
        boolean charging = orders instanceof Orders.Energised on && on.way() == Way.CHARGE;
        rig.channels(Role.CELL_VOLTS).forEach(cell -> cell(cell, charging));
        rig.channels(Role.BODY).forEach(body -> body(body, charging));
        rig.channels().stream().filter(c -> c.role().warmsByCurrent()).forEach(this::warmed);
        current(orders);
        rig.channels(Role.RECORDER_LAG)
                .forEach(lag -> up(lag, 0, 0, Envelope.RECORDER_LAG_TRIP_S, "the recorder's lag"));
        return found.stream().min(Comparator.comparingDouble(Nearest::share));
    }

    private Trips trips() {
        return rig.guards().trips();
    }

    private void cell(Channel cell, boolean charging) {
        double u = cell.uncertainty(USUAL_CELL_V);
        up(cell, USUAL_CELL_V, u, trips().cellHighVolts(), "cell high");
        double low = charging ? Envelope.LOW_CHARGING_TRIP_V : trips().cellLowVolts();
        down(cell, USUAL_CELL_V, u, low, charging ? "cell low while charging" : "cell low");
    }

    private void body(Channel body, boolean charging) {
        double u = body.offsetU();
        up(body, USUAL_C, u, charging ? trips().chargingHighCelsius() : trips().dischargingHighCelsius(),
                "cell too warm");
        down(body, USUAL_C, u, charging ? trips().chargingLowCelsius() : trips().dischargingLowCelsius(),
                "cell too cold");
    }

    private void warmed(Channel place) {
        double u = place.offsetU();
        up(place, USUAL_C, u, trips().jointCelsius(), "a part too warm");
        rig.channels(Role.ROOM).forEach(room -> value(room).ifPresent(celsius ->
                up(place, celsius, Math.hypot(u, room.offsetU()), celsius + trips().jointOverRoomKelvin(), "a part too warm over the room")));
        if (place.role() == Role.STUD) {
            rig.channels(Role.BODY).stream()
                    .filter(body -> body.cell() == place.cell())
                    .forEach(body -> value(body).ifPresent(celsius -> up(place, celsius, Math.hypot(u, body.offsetU()),
                            celsius + trips().jointOverCellKelvin(), "a terminal too warm over its cell")));
        }
    }

    private void current(Orders orders) {
        if (!(orders instanceof Orders.Energised on) || on.stage() != Closing.CURRENT) {
            return;
        }
        for (Channel current : rig.channels(Role.CURRENT)) {
            value(current).ifPresent(amps -> {
                double set = on.set().amps();
                double u = current.uncertainty(amps) + Envelope.NO_CURRENT_A;
                double limit = ORDERED * set + u;
                double share = (limit - Math.abs(amps)) / (limit - set);
                found.add(new Nearest(current, amps, u, on.way().sign() * limit, Math.min(1, share),
                        "current above the order"));
            });
        }
    }

    private void up(Channel channel, double usual, double u, double limit, String words) {
        value(channel).ifPresent(v -> found.add(new Nearest(channel, v, u, limit,
                Math.min(1, (limit - v - u) / (limit - usual - u)), words)));
    }

    private void down(Channel channel, double usual, double u, double limit, String words) {
        value(channel).ifPresent(v -> found.add(new Nearest(channel, v, u, limit,
                Math.min(1, (v - u - limit) / (usual - u - limit)), words)));
    }

    private Optional<Double> value(Channel channel) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid valid
                ? Optional.of(valid.value())
                : Optional.empty();
    }
}
