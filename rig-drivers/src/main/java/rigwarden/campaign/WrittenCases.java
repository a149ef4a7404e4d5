package rigwarden.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rigwarden.rigfile.FaultWords;
import rigwarden.rigfile.WrittenCase;

/** Cases that somebody wrote, made into cases of a night. */
public final class WrittenCases {
    private WrittenCases() {}

    /** What can be written for a scene, from the same lists from which cases are drawn. */
    public static List<FaultWords> words(Scene scene) {
        return Catalogue.of(scene.rig()).stream()
                .map(k -> new FaultWords(k.name(), k.unit(), k.most(), k.places().stream().map(Place::name).distinct().toList()))
                .toList();
    }

    /** Every case on every night, numbered in order. */
    static List<Case> of(List<Night> nights, List<WrittenCase> written) {
        List<Case> cases = new ArrayList<>();
        for (Night night : nights) {
            for (WrittenCase one : written) {
                cases.add(of(cases.size() + 1, night, one));
            }
        }
        return cases;
    }

    private static Case of(int number, Night night, WrittenCase written) {
        double scanSeconds = night.scene().rig().scanNanos() * 1e-9;
        List<Strike> strikes = written.faults().stream()
                .map(fault -> new Strike(injection(night, fault, number),
                        (fault.step() == 0 ? 0 : night.stepScan(fault.step())) + Math.round(fault.afterSeconds() / scanSeconds)))
                .sorted(Comparator.comparingLong(Strike::scan)).toList();
        return new Case(number, written.name(), night, strikes,
                strikes.getFirst().scan() + Math.round(written.minutes() * 60 / scanSeconds));
    }

    private static Injection injection(Night night, WrittenCase.Fault fault, int number) {
        FaultKind kind = Catalogue.of(night.scene().rig()).stream().filter(k -> k.name().equals(fault.fault())).findFirst().orElseThrow();
        Place place = kind.places().stream().filter(p -> p.name().equals(fault.place())).findFirst().orElseThrow();
        return kind.at(place, fault.size(), number);
    }
}
