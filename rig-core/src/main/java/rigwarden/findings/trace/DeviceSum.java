package rigwarden.findings.trace;

/**
 * What the working devices' own meters say of a step's charge, beside the shunt.
 *
 * @param name column of the meter that moved most
 * @param ampHours by the meters, Ah, positive into the cells
 * @param expandedAmpHours what they may be wrong by, by their own statement (k = 2), Ah
 * @param seconds over which they were read
 */
public record DeviceSum(String name, double ampHours, double expandedAmpHours, double seconds) {
    /** Of a step that was broken off and went on so: what they may be wrong by is wrong alike in both. */
    public DeviceSum then(DeviceSum after) {
        return new DeviceSum(name, ampHours + after.ampHours, expandedAmpHours + after.expandedAmpHours, seconds + after.seconds);
    }
}
