package rigwarden.warden;

/**
 * What a check found.
 *
 * @param channel index of the channel; −1 in {@link #NONE} only
 * @param value what it reads
 * @param limit what it was compared with
 */
public record Breach(int channel, double value, double limit) {
    public static final Breach NONE = new Breach(-1, 0, 0);

    public boolean found() {
        return channel >= 0;
    }
}
