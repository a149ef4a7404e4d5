package rigwarden.campaign;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Every kind of fault of a scene, as lines for whoever writes cases. */
public final class FaultList {
    private static final int SHOWN = 12;

    private FaultList() {}

    /** One line for each kind. */
    public static List<String> of(Scene scene) {
        return Catalogue.of(scene.rig()).stream().map(FaultList::line).toList();
    }

    private static String line(FaultKind kind) {
        String size = kind.sized()
                ? String.format(Locale.ROOT, "0…%.3g %s, limit %.3g", kind.most(), kind.unit(), kind.limit()) : "no size";
        List<String> names = kind.places().stream().map(Place::name).distinct().toList();
        String places = names.stream().limit(SHOWN).map(name -> '"' + name + '"').collect(Collectors.joining(", "));
        return String.format("  %-28s %-8s %-14s %-32s %s%s", '"' + kind.name() + '"', kind.origin().word(), kind.how(), size, places,
                names.size() > SHOWN ? " and " + (names.size() - SHOWN) + " more" : "");
    }
}
