package rigwarden.warden;

import java.util.function.DoubleFunction;

/**
 * Where a rule turns: two neighbouring numbers, with none between.
 *
 * @param inside the last at which it finds nothing
 * @param outside the first at which it finds a breach
 * @param breach that breach
 */
record Edge(double inside, double outside, Breach breach) {
    static Edge between(double healthy, double breaching, DoubleFunction<Breach> look) {
        if (look.apply(healthy).found() || !look.apply(breaching).found()) {
            throw new AssertionError("no edge between " + healthy + " and " + breaching + ": found "
                    + look.apply(healthy) + " and " + look.apply(breaching));
        }
        double inside = healthy;
        double outside = breaching;
        double middle = inside + (outside - inside) / 2;
        while (middle != inside && middle != outside) {
            if (look.apply(middle).found()) {
                outside = middle;
            } else {
                inside = middle;
            }
            middle = inside + (outside - inside) / 2;
        }
        return new Edge(inside, outside, look.apply(outside));
    }
}
