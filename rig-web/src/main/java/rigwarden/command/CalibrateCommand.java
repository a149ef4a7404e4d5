package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.bus.BusFailure;
import rigwarden.calibration.Calibrating;
import rigwarden.calibration.MeterFile;
import rigwarden.calibration.MeterStatement;
import rigwarden.calibration.Point;
import rigwarden.calibration.Result;
import rigwarden.calibration.ShuntCertificate;
import rigwarden.emulated.RehearsedCalibration;
import rigwarden.logbook.Logbook;
import rigwarden.rig.Calibratable;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Rig;
import rigwarden.rigfile.CalibrationFile;
import rigwarden.rigfile.RigFile;

/** {@code rigwarden calibrate}: one channel against a reference meter. Nothing is ordered on. */
@Command(
        name = "calibrate",
        mixinStandardHelpOptions = true,
        description = {"Calibrate one channel against a reference meter, by two or more points, and write the result beside the rig file.",
            "Nothing is switched on: set the values with something else, and all of them in one range of the meter."})
final class CalibrateCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RIG", description = "Rig file.")
    private Path rigFile = Path.of("");

    @Parameters(index = "1", paramLabel = "CHANNEL", description = "current_a, pack_v, or an input of the rig file.")
    private String channel = "";

    @Option(names = "--meter", required = true, paramLabel = "FILE", description = "What the meter states (TOML): `rigwarden keys --meter` lists its keys.")
    private Path meterFile = Path.of("");

    @Option(names = "--points", paramLabel = "FILE", description = "Points that were taken before, instead of asking: [[point]] reads, scatter, scans, shown.")
    private Optional<Path> pointFile = Optional.empty();

    @Option(names = "--shunt-ohms", paramLabel = "OHM", description = "With a certificate of the shunt: its resistance. The meter then shows volts.")
    private Optional<Double> shuntOhms = Optional.empty();

    @Option(names = "--shunt-u", paramLabel = "OHM", description = "The certificate's expanded uncertainty (k = 2).")
    private Optional<Double> shuntU = Optional.empty();

    @Option(names = "--seconds", paramLabel = "N", description = "Length of each mean, 1…60 (default: 5).")
    private int seconds = 5;

    @Option(names = "--days", paramLabel = "N", description = "Days for which it holds, 1…730 (default: 365).")
    private int days = 365;

    @Option(names = "--rehearse", description = "On an emulated copy, with an emulated meter somewhere within its statement.")
    private boolean rehearse;

    @Option(names = "--seed", paramLabel = "N", description = "Rehearsal: seed of specimen and meter (default: 1).")
    private long seed = 1;

    @Option(names = "--at", split = ",", paramLabel = "VALUE", description = "Rehearsal: true values that are held, in the channel's unit.")
    private List<Double> at = new ArrayList<>();

    @Option(names = "--to", paramLabel = "DIR",
            description = "Folder to write into (default: the rig file's; of a rehearsal: none). A rehearsal lays a copy of the rig file beside it.")
    private Optional<Path> folder = Optional.empty();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws IOException {
        Rig rig = Inputs.sound(RigFile.bare(rigFile)).value();
        MeterStatement meter = Inputs.sound(MeterFile.read(meterFile)).value();
        Optional<ShuntCertificate> certificate = certificate();
        check(rig);
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        ChannelCalibration found = rehearse ? rehearsed(rig, meter, certificate, today) : real(rig, meter, certificate, today);
        CalibrationWords.of(rig, found).forEach(System.out::println);
        if (rehearse && folder.isEmpty()) {
            System.out.println("A rehearsal: nothing was written. With --to DIR it is, beside a copy of the rig file, for `rigwarden rehearse --seed "
                    + seed + "`.");
            return Exits.DONE;
        }
        Path written = write(found);
        System.out.println("Written to " + written + ". The rig file is read with it from now on.");
        if (!rehearse) {
            try (Logbook book = Logbook.open(logbook.folder(), LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString())) {
                book.calibration(rig.name(), found);
            }
        }
        return Exits.DONE;
    }

    private void check(Rig rig) {
        if (!Calibratable.of(rig).containsKey(channel)) {
            throw new Refused(channel + " of " + rigFile + ": allowed is one of " + String.join(", ", Calibratable.of(rig).keySet())
                    + ", because the others are not read from one chip by a straight line.");
        }
        if (Calibratable.written(rig, channel)) {
            throw new Refused(channel + " of " + rigFile + " has a calibration in the rig file itself, and nobody could tell which of two holds."
                    + " Take it out there first.");
        }
        if (seconds < 1 || seconds > 60 || days < 1 || days > 730) {
            throw new Refused("--seconds " + seconds + " --days " + days + ": allowed are 1…60 s and 1…730 days; chips and shunts age.");
        }
        if (rehearse && (pointFile.isPresent() || at.size() < 2)) {
            throw new Refused("--rehearse needs --at with two or more true values, as --at 5,20,50, and takes no --points.");
        }
        if (rehearse && (seed < 0 || seed > Integer.MAX_VALUE)) {
            throw new Refused("--seed " + seed + ": allowed is 0…" + Integer.MAX_VALUE + ".");
        }
    }

    private Optional<ShuntCertificate> certificate() {
        if (shuntOhms.isEmpty() && shuntU.isEmpty()) {
            return Optional.empty();
        }
        boolean whole = shuntOhms.isPresent() && shuntU.isPresent() && shuntOhms.get() > 0 && shuntU.get() >= 0;
        if (!whole || !channel.equals(Calibratable.CURRENT)) {
            throw new Refused("--shunt-ohms and --shunt-u go together, both in ohm and not negative, and with current_a only: without its"
                    + " uncertainty a certificate says nothing.");
        }
        return Optional.of(new ShuntCertificate(shuntOhms.get(), shuntU.get()));
    }

    private ChannelCalibration rehearsed(Rig rig, MeterStatement meter, Optional<ShuntCertificate> certificate, LocalDate today) {
        try {
            RehearsedCalibration bench = new RehearsedCalibration(rig, channel, meter, certificate, seed);
            int scans = scans(rig);
            List<Point> points = at.stream().map(truth -> bench.point(truth, scans)).toList();
            System.out.println("REHEARSAL of a calibration of " + rig.name() + ", seed " + seed + ": chip, shunt and meter are emulated.");
            for (int i = 0; i < points.size(); i++) {
                System.out.printf("  held %s, reads %.6g, meter shows %s%n", at.get(i), points.get(i).reads(), points.get(i).shown());
            }
            return found(bench.calibrating(rig, meter).of(points, today, days, bench.seen(seed)));
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be rehearsed: " + e.getMessage());
        }
    }

    private ChannelCalibration real(Rig rig, MeterStatement meter, Optional<ShuntCertificate> certificate, LocalDate today) throws IOException {
        Calibrating how = new Calibrating(rig, channel, meter, certificate);
        if (pointFile.isPresent()) {
            return found(how.of(Inputs.sound(MeterFile.points(pointFile.get())).value(), today, days, Calibrating.Seen.NOTHING));
        }
        BufferedReader person = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        try (StillRig still = StillRig.open(rig, channel)) {
            String unit = rig.column(channel).orElseThrow().quantity().symbol();
            List<Point> points = new AskedPoints(still.taking(), scans(rig), unit, certificate.isPresent() ? "V" : unit, person, System.out).all();
            return found(how.of(points, today, days, still.seen()));
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be read: " + e.getMessage());
        }
    }

    private int scans(Rig rig) {
        return (int) (seconds * 1_000_000_000L / rig.scanNanos());
    }

    private static ChannelCalibration found(Result result) {
        return switch (result) {
            case Result.Found found -> found.calibration();
            case Result.Refused refused -> throw new Refused(refused.words() + " Nothing was written.");
        };
    }

    private Path write(ChannelCalibration found) throws IOException {
        Path beside = rigFile;
        if (folder.isPresent()) {
            Files.createDirectories(folder.get());
            beside = folder.get().resolve(String.valueOf(rigFile.getFileName()));
            if (Files.notExists(beside)) {
                Files.copy(rigFile, beside);
            }
        }
        Path file = CalibrationFile.of(beside, channel);
        Path fresh = file.resolveSibling(file.getFileName() + ".new");
        Files.writeString(fresh, found.text());
        return Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }
}
