package rigwarden.rig;

/**
 * The battery's own protection as its seller or the last proof states it. Rigwarden neither reads nor sets it.
 *
 * @param highVolts cell voltage at which it stops a charge, V
 * @param lowVolts cell voltage at which it stops a discharge, V
 * @param toleranceVolts limits ± of both, V
 * @param delaySeconds longest time from the crossing to its opening, s
 * @param ratedAmps continuous rating, A
 * @param balances whether it moves charge between cells by itself
 */
public record Protection(
        double highVolts,
        double lowVolts,
        double toleranceVolts,
        double delaySeconds,
        double ratedAmps,
        boolean balances) {}
