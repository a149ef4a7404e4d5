package rigwarden.page;

import java.util.List;
import java.util.Optional;
import rigwarden.live.Snapshot;
import rigwarden.live.Stretch;
import rigwarden.paper.Spots;
import rigwarden.program.Ended;

/** The night as one strip: each step as wide as it lasted, or is thought to last. */
final class Strip {
    private static final double WIDTH = 1000;
    private static final double GAP = 2;
    private static final double LEAST = 6;
    private static final int TOP = 8;
    private static final int HEIGHT = 30;

    private Strip() {}

    /** The strip as SVG; no text in it is wider than a step, since there is none. */
    static String draw(Snapshot now) {
        List<Stretch> strip = now.strip();
        if (strip.isEmpty()) {
            return "";
        }
        long begin = Math.min(now.originNanos(), strip.getFirst().beginNanos());
        long end = Math.max(strip.getLast().endNanos(), now.scan().nanos());
        double each = (WIDTH - GAP * strip.size()) / Math.max(1, end - begin);
        StringBuilder svg = new StringBuilder("<svg viewBox=\"0 0 1000 46\" preserveAspectRatio=\"none\" role=\"img\""
                + " aria-label=\"the steps of the programme, each as wide as it lasts\">");
        double x = 0;
        for (Stretch stretch : strip) {
            double width = Math.max(LEAST, (stretch.endNanos() - stretch.beginNanos()) * each);
            svg.append(Spots.say("<rect class=\"%s %s\" x=\"%.1f\" y=\"%d\" width=\"%.1f\" height=\"%d\"><title>%s"
                            + "</title></rect>", stretch.kind().replace('_', '-'),
                    stretch.place().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'), x, TOP, width,
                    HEIGHT, Html.text(title(stretch))));
            if (stretch.place() == Stretch.Place.NOW) {
                double gone = (double) (now.scan().nanos() - stretch.beginNanos())
                        / Math.max(1, stretch.endNanos() - stretch.beginNanos());
                svg.append(Spots.say("<rect class=\"now-mark\" x=\"%.1f\" y=\"0\" width=\"3\" height=\"46\"/>",
                        x + Math.clamp(gone, 0, 1) * width));
            }
            if (stretch.by().equals(Optional.of(Ended.TRIPPED))) {
                svg.append(Spots.say("<rect class=\"trip-mark\" x=\"%.1f\" y=\"0\" width=\"8\" height=\"46\"><title>%s</title></rect>",
                        x + width - 4, Html.text(trip(now))));
            }
            x += width + GAP;
        }
        return svg.append("</svg>").toString();
    }

    /** The same in words, an item a step. */
    static String list(Snapshot now) {
        StringBuilder items = new StringBuilder();
        now.strip().forEach(stretch -> items.append("<li>").append(Html.text(title(stretch))).append("</li>"));
        now.trip().ifPresent(_ -> items.append("<li>").append(Html.text(trip(now))).append("</li>"));
        return items.toString();
    }

    /** Which rule ended the night, and when. */
    private static String trip(Snapshot now) {
        return now.trip().map(t -> Spots.say("tripped by rule %d, %s, at %s", t.rule().number(), t.rule().name(),
                Spots.clock(t.sinceNanos() - now.originNanos()))).orElse("tripped");
    }

    private static String title(Stretch stretch) {
        String span = Spots.span(stretch.endNanos() - stretch.beginNanos());
        String end = switch (stretch.place()) {
            case PAST -> span + stretch.by().map(by -> ", ended by " + by.word().replace('_', ' ')).orElse("");
            case NOW -> "now, about " + span + " in all";
            case TO_COME -> "to come, about " + span;
            case DROPPED -> "did not happen";
        };
        return Spots.say("step %d, %s: %s", stretch.step(), stretch.kind().replace('_', ' '), end);
    }
}
