package rigwarden.pack;

import java.util.Arrays;

/** Temperatures of studs, links, shunt and contactor, and the paths of heat between them (pack model page). */
final class Heat {
    private static final double STUD_J = 40;
    private static final double LINK_J = 30;
    private static final double STUD_BODY_W = 0.8;
    private static final double STUD_LINK_W = 1.5;
    private static final double LINK_ROOM_W = 0.06 + 0.3;
    private static final double NEIGHBOUR_W = 4;
    private static final double SHUNT_J = 60;
    private static final double SHUNT_W = 0.5;
    private static final double CONTACTOR_J = 150;
    private static final double CONTACTOR_W = 0.8;

    /** By cell: negative stud at 2k, positive at 2k + 1; a link with the same index sits on each. */
    final double[] studs;
    final double[] links;
    final double[] jointOhms;
    double shunt;
    double contactor;

    Heat(int cells, double celsius, double jointOhms) {
        studs = new double[2 * cells];
        links = new double[2 * cells];
        this.jointOhms = new double[2 * cells];
        Arrays.fill(studs, celsius);
        Arrays.fill(links, celsius);
        Arrays.fill(this.jointOhms, jointOhms);
        shunt = celsius;
        contactor = celsius;
    }

    Heat(Heat other) {
        studs = other.studs.clone();
        links = other.links.clone();
        jointOhms = other.jointOhms.clone();
        shunt = other.shunt;
        contactor = other.contactor;
    }

    double jointsOhms() {
        double sum = 0;
        for (double ohms : jointOhms) {
            sum += ohms;
        }
        return sum;
    }

    /** Moves all nodes on; {@code bodyWatts} is the heat made in each body. */
    void move(Cell[] cells, double[] bodyWatts, double amps, WorldParameters.PathOhms path, double room,
            double seconds) {
        double square = amps * amps;
        for (int k = 0; k < cells.length; k++) {
            Cell cell = cells[k];
            double body = cell.bodyCelsius;
            double watts = bodyWatts[k] - cell.parameters.roomWattsPerKelvin() * (body - room);
            for (int stud = 2 * k; stud < 2 * k + 2; stud++) {
                double toBody = STUD_BODY_W * (studs[stud] - body);
                double toLink = STUD_LINK_W * (studs[stud] - links[stud]);
                watts += toBody;
                studs[stud] += seconds / STUD_J
                        * (square * (path.tabOhms() + jointOhms[stud] / 2) - toBody - toLink);
                links[stud] += seconds / LINK_J
                        * (square * (path.linkOhms() + jointOhms[stud] / 2) + toLink
                                - LINK_ROOM_W * (links[stud] - room));
            }
            if (k > 0) {
                watts += NEIGHBOUR_W * (cells[k - 1].bodyCelsius - body);
            }
            if (k + 1 < cells.length) {
                watts += NEIGHBOUR_W * (cells[k + 1].bodyCelsius - body);
            }
            cell.bodyCelsius = body + seconds * (watts / cell.parameters.bodyJoulesPerKelvin()
                    + cell.extraKelvinPerSecond);
        }
        shunt += seconds / SHUNT_J * (square * path.shuntOhms() - SHUNT_W * (shunt - room));
        contactor += seconds / CONTACTOR_J * (square * path.contactorOhms() - CONTACTOR_W * (contactor - room));
    }
}
