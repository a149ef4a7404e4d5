package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * An uncertainty budget: independent terms in one unit, combined by JCGM 100:2008, 5.1.2, and expanded to a coverage of
 * 95.45 %.
 *
 * @param terms never empty
 */
public record Budget(List<Term> terms) {
    /** Coverage of every stated interval. */
    public static final double COVERAGE = 0.9545;
    private static final double RECTANGULAR = Math.sqrt(3);

    /**
     * One term.
     *
     * @param name what it comes from, in words
     * @param standard standard uncertainty, in the unit of the result
     * @param freedom degrees of freedom; infinite for a term from stated limits
     * @param rectangular whether nothing is known inside its limits; else it is taken as normal
     * @param nature how it errs in other results by the same instruments
     * @param sign 1 or -1: which way the result goes where its cause goes up
     * @param left standard uncertainty that would be left of it once what is usual was done against it; NaN where that is not known here
     */
    public record Term(String name, double standard, double freedom, boolean rectangular, Nature nature, int sign, double left) {
        public Term {
            if (!(standard >= 0) || !(freedom > 0) || Math.abs(sign) != 1) {
                throw new IllegalArgumentException(name + ": not an uncertainty: " + standard + ", ν " + freedom + ", sign " + sign);
            }
        }

        /** A normal term of its own. */
        public Term(String name, double standard, double freedom) {
            this(name, standard, freedom, false, Nature.OWN, 1, Double.NaN);
        }

        /** Half width of the limits of a rectangular term. */
        double halfWidth() {
            return standard * RECTANGULAR;
        }

        /** The standard uncertainty with its sign. */
        double signed() {
            return sign * standard;
        }

        /** The same cause with another size, whose sign is the term's; what would be left of it is another size too. */
        public Term sized(double signed) {
            double share = standard == 0 ? 1 : Math.abs(signed) / standard;
            return new Term(name, Math.abs(signed), freedom, rectangular, nature, signed < 0 ? -1 : 1, left * share);
        }

        /** The same, of which it is known what standard uncertainty would be left. */
        Term leaving(double standardLeft) {
            return new Term(name, standard, freedom, rectangular, nature, sign, standardLeft);
        }

        /** In another unit, or as a part of something else. */
        Term times(double factor) {
            return sized(factor * signed());
        }

        Term named(String other) {
            return new Term(other, standard, freedom, rectangular, nature, sign, left);
        }
    }

    public Budget {
        terms = List.copyOf(terms);
    }

    /** A term of its own from limits ± {@code halfWidth} with nothing known inside them (JCGM 100, 4.3.7). */
    public static Term limits(String name, double halfWidth) {
        return limits(Nature.OWN, name, Math.abs(halfWidth));
    }

    /** The same of another nature; negative where the result falls when the cause goes up. */
    public static Term limits(Nature nature, String name, double halfWidth) {
        return new Term(name, 0, Double.POSITIVE_INFINITY, true, nature, 1, Double.NaN).sized(halfWidth / RECTANGULAR);
    }

    /** A term of its own known as a standard uncertainty. */
    public static Term standard(String name, double standard) {
        return standard(Nature.OWN, name, Math.abs(standard));
    }

    /** The same of another nature; negative where the result falls when the cause goes up. */
    public static Term standard(Nature nature, String name, double standard) {
        return new Term(name, 0, Double.POSITIVE_INFINITY, false, nature, 1, Double.NaN).sized(standard);
    }

    /** The same budget in another unit. */
    Budget times(double factor) {
        return new Budget(terms.stream().map(t -> t.times(factor)).toList());
    }

    /**
     * The budget of a sum of two results by the same instruments: what has the same name errs the same way in both, and is
     * added as it is, not by squares.
     */
    public Budget plus(Budget other) {
        List<Term> sum = new ArrayList<>();
        for (Term term : terms) {
            double more = other.terms.stream().filter(t -> t.name().equals(term.name())).mapToDouble(Term::signed).sum();
            sum.add(term.sized(term.signed() + more));
        }
        other.terms.stream().filter(t -> terms.stream().noneMatch(mine -> mine.name().equals(t.name()))).forEach(sum::add);
        return new Budget(sum);
    }

    /** Combined standard uncertainty. */
    public double combined() {
        double sum = 0;
        for (Term term : terms) {
            sum += term.standard() * term.standard();
        }
        return Math.sqrt(sum);
    }

    /** Effective degrees of freedom, not yet truncated; infinite when every term's are. */
    public double freedom() {
        double below = 0;
        for (Term term : terms) {
            below += Math.pow(term.standard(), 4) / term.freedom();
        }
        return below == 0 ? Double.POSITIVE_INFINITY : Math.pow(combined(), 4) / below;
    }

    /**
     * Coverage factor: with degrees of freedom from Welch–Satterthwaite; where all are infinite, from the shapes of the terms
     * themselves (JCGM 101), since one dominant rectangular term needs less than two.
     */
    public double factor() {
        double combined = combined();
        if (combined == 0) {
            return 2;
        }
        double freedom = freedom();
        return Double.isInfinite(freedom)
                ? Convolution.halfWidth(terms, COVERAGE) / combined
                : factor(freedom);
    }

    /** Expanded uncertainty at 95.45 %. */
    public double expanded() {
        return factor() * combined();
    }

    /**
     * Probability that the result's error is not more than this: by the same distribution as the expanded uncertainty, so that it is
     * 97.725 % at that and 50 % at zero.
     *
     * @param deviation in the unit of the result, with its sign
     */
    public double below(double deviation) {
        double combined = combined();
        if (combined == 0) {
            return deviation >= 0 ? 1 : 0;
        }
        double freedom = freedom();
        return Double.isInfinite(freedom) ? Convolution.below(terms, deviation) : student(freedom).cumulativeProbability(deviation / combined);
    }

    /**
     * Coverage factor at 95.45 % for degrees of freedom truncated to a whole number (JCGM 100, G.4.1).
     *
     * @param freedom at least 1; infinite gives the normal distribution's 2.000
     */
    public static double factor(double freedom) {
        return student(freedom).inverseCumulativeProbability((1 + COVERAGE) / 2);
    }

    private static TDistribution student(double freedom) {
        return new TDistribution(Math.max(1, Math.min(Math.floor(freedom), 1e9)));
    }

    /** The largest term: what would shrink the result most. */
    public Term largest() {
        Term largest = terms.getFirst();
        for (Term term : terms) {
            if (term.standard() > largest.standard()) {
                largest = term;
            }
        }
        return largest;
    }
}
