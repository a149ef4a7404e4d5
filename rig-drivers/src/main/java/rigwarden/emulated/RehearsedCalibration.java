package rigwarden.emulated;

import java.util.Optional;
import java.util.OptionalLong;
import rigwarden.bus.BusFailure;
import rigwarden.calibration.Calibrating;
import rigwarden.calibration.MeterStatement;
import rigwarden.calibration.Point;
import rigwarden.calibration.ShuntCertificate;
import rigwarden.calibration.Taking;
import rigwarden.loop.Pacer;
import rigwarden.pack.Chance;
import rigwarden.rig.Rig;
import rigwarden.warden.Scan;

/**
 * A calibration of an emulated copy: a calibrator holds the channel's input, a reference meter somewhere within its statement looks
 * at the same, and the real drivers read.
 */
public final class RehearsedCalibration {
    private static final int SETTLING_SCANS = 20;

    private final EmulatedRig emulated;
    private final String channel;
    private final Pacer pacer;
    private final Taking taking;
    private final ReferenceMeter meter;
    private final Optional<ShuntCertificate> certificate;

    /**
     * Nothing is held yet.
     *
     * @param rig without a calibration of the channel
     * @param stated what the reference meter states
     * @param certificate its uncertainty is taken, and a resistance drawn within it about this specimen's own
     * @param seed of the specimen and of the meter
     * @throws BusFailure when a chip does not answer as it must at the start
     */
    public RehearsedCalibration(Rig rig, String channel, MeterStatement stated, Optional<ShuntCertificate> certificate, long seed)
            throws BusFailure {
        this.channel = channel;
        emulated = new EmulatedRig(rig, seed);
        pacer = Pacer.ofScan(emulated.clock(), rig.scanNanos());
        taking = new Taking(rig, channel, this::scan);
        meter = new ReferenceMeter(stated.relative(), stated.zeroLimits(), stated.digit(), seed);
        this.certificate = certificate.map(one -> new ShuntCertificate(emulated.shuntOhms()
                + one.expandedOhms() / 2 * Chance.of(seed, "shunt", "certificate").nextGaussian(), one.expandedOhms()));
    }

    private Scan scan() {
        emulated.await(pacer);
        emulated.catchUp();
        return emulated.rigBench().take();
    }

    /** What to make of the points: the certificate is this specimen's own. */
    public Calibrating calibrating(Rig rig, MeterStatement stated) {
        return new Calibrating(rig, channel, stated, certificate);
    }

    /** Holds a true value, waits until it stands, and reads. */
    public Taking.Mean read(double truth, int scans) {
        emulated.hold(channel, truth);
        for (int i = 0; i < SETTLING_SCANS; i++) {
            scan();
        }
        return taking.mean(scans).orElseThrow(() -> new IllegalStateException(channel + " gives no readings on an emulated rig at rest"));
    }

    /** The same, beside what the reference meter shows. */
    public Point point(double truth, int scans) {
        Taking.Mean mean = read(truth, scans);
        return mean.shown(meter.shows(certificate.isPresent() ? emulated.senseVolts(truth) : truth));
    }

    /** The shunt's temperature meanwhile, and whose copy it is. */
    public Calibrating.Seen seen(long seed) {
        return new Calibrating.Seen(taking.shuntCelsius(), OptionalLong.of(seed));
    }
}
