package rigwarden.pack;

/**
 * A temperature probe's sensing end.
 *
 * @param node what it is fixed to
 * @param lagSeconds time constant of its first-order lag behind the node, above 0
 */
public record Bead(Node node, double lagSeconds) {
    public Bead {
        if (!(lagSeconds > 0)) {
            throw new IllegalArgumentException("a bead needs a lag above 0 s: " + lagSeconds);
        }
    }
}
