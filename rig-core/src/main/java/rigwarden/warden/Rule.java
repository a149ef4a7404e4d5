package rigwarden.warden;

import java.util.Set;
import rigwarden.rig.Role;

/**
 * One thing that the warden looks for.
 *
 * @param number never reused
 * @param name short, for tables, for example "cell high"
 * @param sentence what it does, in one sentence
 * @param reads roles that it reads
 * @param limit its limit in words with unit
 * @param holdNanos how long a breach must last
 * @param severity what it does then
 * @param clears when a trip of it may be cleared
 * @param check finds a breach in one scan
 */
public record Rule(
        int number,
        String name,
        String sentence,
        Set<Role> reads,
        String limit,
        long holdNanos,
        Severity severity,
        Clearing clears,
        Check check) {
    @Override
    public boolean equals(Object other) {
        return other instanceof Rule rule && rule.number == number;
    }

    @Override
    public int hashCode() {
        return number;
    }

    @Override
    public String toString() {
        return number + " " + name;
    }
}
