package rigwarden.calibration;

/**
 * What a shunt's own certificate says. With it the current is calibrated by millivolts: the reference meter looks at the
 * shunt's sense screws, or at a source in their place.
 *
 * @param ohms resistance, ohm
 * @param expandedOhms its expanded uncertainty (k = 2), ohm
 */
public record ShuntCertificate(double ohms, double expandedOhms) {
    public ShuntCertificate {
        if (!(ohms > 0) || !(expandedOhms >= 0)) {
            throw new IllegalArgumentException("not a certificate: " + ohms + " ± " + expandedOhms + " ohm");
        }
    }

    /** Standard uncertainty, relative. */
    public double relativeU() {
        return expandedOhms / 2 / ohms;
    }
}
