package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.HEARTBEAT;
import static rigwarden.prove.Outcome.Part.JOINT;
import static rigwarden.prove.Outcome.Part.NO_LOAD;
import static rigwarden.prove.Outcome.Part.STOP;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What to look at after a trip in a proof.
 *
 * @param part of the check that such a trip belongs to
 * @param words for the person at the rig
 * @param rules numbers of the rules that speak of it
 */
record LookAt(Outcome.Part part, String words, Set<Integer> rules) {
    /** Every rule that can trip is in one of these. */
    static final List<LookAt> ALL = List.of(
            new LookAt(STOP, "Bring the cells nearer to the middle, then prove again.", Set.of(1, 2, 3)),
            new LookAt(STOP, "Look at the taps: a lead, its ring, its fuse, the joint under it.", Set.of(4, 5, 33)),
            new LookAt(JOINT, "Look at the taps: a lead, its ring, its fuse, the joint under it.", Set.of(6)),
            new LookAt(STOP, "Look at the shunt's sense leads and at its ohms in the rig file: the charge that was counted does not fit these cells.",
                    Set.of(9)),
            new LookAt(STOP, "The shunt's two sense leads are swapped, or source and sink are.", Set.of(10, 14)),
            new LookAt(STOP, "Look at the device's leads and setting, and at the shunt's sense leads: each on its own screw.", Set.of(11, 12, 13, 38)),
            new LookAt(STOP, "Look at the relay's and the contactor's contacts and at every plug of the path.", Set.of(15, 16)),
            new LookAt(NO_LOAD, "Look at the charger's voltage setting and its leads; measure it by hand before any cell meets it.", Set.of(17, 18)),
            new LookAt(STOP, "A contact is welded, or something else feeds the bus: part the cells by hand before anything else.", Set.of(19, 45, 46, 48)),
            new LookAt(STOP, "Let the cells come to the room's warmth, and look at that probe's type and place.", Set.of(21, 22)),
            new LookAt(STOP, "Let it cool, then look at that joint: its faces, washers and torque; and at the probe on it.", Set.of(23, 24, 25, 26, 27, 28)),
            new LookAt(STOP, "Keep away from that cell until it is cold: it may be shorted inside. If it is cold to the hand from afar, look at its probe.",
                    Set.of(29)),
            new LookAt(STOP, "Put that probe back on its joint, so that a pull does not move it.", Set.of(30)),
            new LookAt(STOP, "Look at the plug, the supply and the address of what fell silent.", Set.of(31, 32, 34, 35, 36)),
            new LookAt(STOP, "Look at the shunt monitor's supply and wires; when it comes back, replace the chip.", Set.of(37)),
            new LookAt(STOP, "The device's own relay is stuck, bridged, or its line moves another: the contactor would stand alone.",
                    Set.of(39)),
            new LookAt(STOP, "The contactor is welded or bridged: part the cells by hand, then replace it.", Set.of(40)),
            new LookAt(STOP, "The loop was opened, or a contact of it is loose.", Set.of(41)),
            new LookAt(HEARTBEAT, "The heartbeat stage does not feed the coil: look at its input line and its supply.", Set.of(42)),
            new LookAt(STOP, "The contactor's coil, its supply, or its mirror contact's wire.", Set.of(43)),
            new LookAt(HEARTBEAT, "The heartbeat stage is stuck or too slow: a dead computer would hold the contactor closed.", Set.of(44)),
            new LookAt(STOP, "The pre-charge resistor, its relay, or a load that was left on the bus.", Set.of(47)),
            new LookAt(HEARTBEAT, "The heartbeat stage lets go too soon, or the contactor fell for another reason: look at its coil and its timing part.",
                    Set.of(49)),
            new LookAt(STOP, "Look at the card: its free space, its age, and what else writes to it.", Set.of(51, 53)),
            new LookAt(STOP, "Look at what else this computer does: it is too busy or too slow for this scan.", Set.of(54, 55)),
            new LookAt(STOP, "Look at that port, its baud rate and its address: another instrument answers, or the line is garbled.",
                    Set.of(56)),
            new LookAt(STOP, "Feel for warmth with everything off, then look at each bolt, plug and contact between pack and bus, and at the lead of either reading.",
                    Set.of(57)),
            new LookAt(STOP, "A defect of this program, and of nothing at the rig: run nothing, keep the run file and report it.", Set.of(61, 62, 63)));

    /** What belongs to this rule's number. */
    static Optional<LookAt> of(int rule) {
        return ALL.stream().filter(one -> one.rules.contains(rule)).findFirst();
    }
}
