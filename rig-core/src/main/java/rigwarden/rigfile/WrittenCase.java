package rigwarden.rigfile;

import java.util.List;

/**
 * A case of a fault campaign as somebody wrote it.
 *
 * @param name of the case
 * @param minutes for which it is looked at, from its first fault
 * @param faults one or more, in any order
 */
public record WrittenCase(String name, double minutes, List<Fault> faults) {
    public WrittenCase {
        faults = List.copyOf(faults);
    }

    /**
     * One fault of it.
     *
     * @param fault name of the fault
     * @param place where
     * @param size in the fault's unit; 0 where it has none
     * @param step number of the step from whose beginning the time counts; 0 counts from the start
     * @param afterSeconds time from there
     */
    public record Fault(String fault, String place, double size, int step, double afterSeconds) {}
}
