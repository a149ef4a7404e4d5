package rigwarden.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.WireError;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;

/** Every communication error of IEC 61784-3 on every bus and every port of a rig, and the mangler. */
final class CommunicationFaults {
    /** Share of messages at which a fault ought to be found: a channel that fails more often than that trips by itself. */
    private static final double SHARE = 0.25;
    /** 2.5 periods of a channel that is read each scan of 100 ms: from then on it is stale. */
    private static final double LATE_S = 0.25;
    private static final double LATEST_S = 10;
    /** Share of bytes; a message of three to five bytes is then spoilt about as often as by a share of a quarter. */
    private static final double BYTES = 0.06;

    private CommunicationFaults() {}

    static List<FaultKind> of(Rig rig) {
        List<FaultKind> kinds = new ArrayList<>();
        for (WireError error : WireError.values()) {
            kinds.add(kind("bus ", error, buses(rig, error)));
            List<Place> ports = ports(rig, error);
            if (!ports.isEmpty()) {
                kinds.add(kind("port ", error, ports));
            }
        }
        kinds.add(new FaultKind("bytes mangled", Origin.MANGLER, "any byte", "of bytes", BYTES, 1,
                List.of(new Place("every bus and port", BoardFault.BytesMangled::new))));
        return kinds;
    }

    private static FaultKind kind(String where, WireError error, List<Place> places) {
        boolean late = error == WireError.DELAY;
        String word = error.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        return new FaultKind(where + word, Origin.COMMUNICATION, word, late ? "s" : "of messages", late ? LATE_S : SHARE,
                late ? LATEST_S : 1, places);
    }

    private static List<Place> buses(Rig rig, WireError error) {
        boolean late = error == WireError.DELAY;
        Stream<Place> i2c = rig.busHertz().keySet().stream().sorted().map(bus -> new Place("bus " + bus, (size, seed) ->
                new BoardFault.BusErrs(bus, error, late ? 1 : size, late ? size : 0, seed)));
        Stream<Place> spi = rig.wires().spiHertz().keySet().stream().sorted().map(bus -> new Place("SPI bus " + bus, (size, seed) ->
                new BoardFault.SpiBusErrs(bus, error, late ? 1 : size, late ? size : 0, seed)));
        return Stream.concat(i2c, spi).toList();
    }

    private static List<Place> ports(Rig rig, WireError error) {
        boolean late = error == WireError.DELAY;
        List<Place> places = new ArrayList<>();
        for (int i = 0; i < rig.devices().size(); i++) {
            int place = i;
            Device device = rig.devices().get(i);
            if (!device.switched()) {
                places.add(new Place("port of " + device.name(), (size, seed) ->
                        new BoardFault.PortErrs(place, error, late ? 1 : size, late ? size : 0, seed)));
            }
        }
        return places;
    }
}
