package rigwarden.findings;

/** What is wrong with a model rig and in no budget: the estimator is told none of it. All 0 where nothing is. */
final class Wrong {
    /** Share of the current that finds a way round the shunt. */
    double past;
    /** So many amperes are read, and counted, where there are none. */
    double driftAmps;
    /** By so much the learnt ratio of the clocks is wrong, relative. */
    double clock;
    /** A ripple folds into the host's samples: they are so much too high, relative, and the chip's count is right. */
    double samples;
    /** A ripple folds into the chip's count: it is so much too high, relative, and the samples are right. */
    double count;
    /** What the shunt has more for each kelvin over 25 °C, relative. */
    double perKelvin;
    /** The tap on this cell's positive stud, from 1, sits up the bar; 0 for none. */
    int tap;
    /** What lies between the stud and that tap, Ω. */
    double tapOhms;
    /** What a balancer takes from each cell past the shunt, A: the model's own fault, kept here for the truth. */
    double balancerAmps;

    /** What is added to a tap's voltage under a current, V; charging lifts what is up the bar. */
    double upTheBar(int cell, double amps) {
        return cell == tap ? amps * tapOhms : 0;
    }
}
