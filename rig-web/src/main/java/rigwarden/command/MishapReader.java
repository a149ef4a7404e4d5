package rigwarden.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Mishap;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;

/** Reads {@code --with "PART VERB [SIZE UNIT] at h:mm"} (elapsed) or {@code … at step N + h:mm}. */
final class MishapReader {
    private static final String NUMBER = "(-?\\d+(?:\\.\\d+)?)";
    private static final double BALANCE_ABOVE_V = 3.40;
    /** What a nut that was forgotten adds, where nothing is said. */
    private static final double LOOSE_OHMS = 1e-3;
    private static final Pattern WHEN = Pattern.compile("(.+?) at (?:step (\\d+) \\+ )?(\\d+):([0-5]\\d)");

    /** One phrase, as it is shown to a person and as it is read. */
    private record Phrase(String shown, Pattern pattern, Function<MatchResult, BoardFault> fault) {}

    private final Rig rig;
    private final List<Phrase> phrases = new ArrayList<>();

    MishapReader(Rig rig) {
        this.rig = rig;
        world("cell 1 heats 10 K/min", "cell (\\d+) heats " + NUMBER + " k/min",
                m -> new Fault.HeatRate(cell(m), number(m, 2)));
        world("cell 1 leaks 0.5 A", "cell (\\d+) leaks " + NUMBER + " a", m -> new Fault.Leak(cell(m), number(m, 2)));
        world("joint 1p loosens 2 mohm", "joint (\\d+)([pn]?) loosens " + NUMBER + " mohm",
                m -> new Fault.LooseJoint(cell(m), !m.group(2).equals("n"), number(m, 3) * 1e-3));
        world("joint 1 loosens", "joint (\\d+) loosens", m -> new Fault.LooseJoint(cell(m), true, LOOSE_OHMS));
        board("wires pick up 1e-5", "wires pick up " + NUMBER, m -> new BoardFault.WiresUpset(number(m, 1), 1));
        board("card stalls 2 s", "card stalls " + NUMBER + " s", m -> new BoardFault.CardStalls(number(m, 1)));
        board("contactor spikes 0.2 V", "contactor spikes " + NUMBER + " v",
                m -> new BoardFault.ContactorSpikes(number(m, 1)));
        world("tap 1 breaks", "tap (\\d+) breaks", m -> new Fault.BrokenTap(tap(m)));
        board("probe terminal_01p_c opens", "probe (\\w+) opens", m -> new BoardFault.OpenProbe(probe(m)));
        world("probe terminal_01p_c falls off", "probe (\\w+) falls off", m -> new Fault.DetachedBead(probe(m)));
        if (!rig.channels(Role.LOOSE).isEmpty()) {
            board("loose probe lies on cell 1 + stud", "loose probe lies on (.+)", m -> new BoardFault.LooseLaid(spot(m)));
            board("loose probe drops", "loose probe drops", _ -> new BoardFault.LooseDrops());
        }
        world("contactor welds", "contactor welds", _ -> new Fault.Weld(Line.CONTACTOR));
        world("contactor sticks open", "contactor sticks open", _ -> new Fault.StuckOpen(Line.CONTACTOR));
        world("heartbeat sticks high", "heartbeat sticks (high|low)",
                m -> new Fault.StuckHeartbeat(m.group(1).equals("high")));
        world("heartbeat is held high", "heartbeat is held (high|low)",
                m -> new Fault.HeartbeatHeldBy(m.group(1).equals("high")));
        world("heartbeat slows 1.5 s", "heartbeat slows " + NUMBER + " s",
                m -> new Fault.SlowHeartbeat(number(m, 1)));
        board("source goes silent", "(\\w+) goes silent", m -> new BoardFault.SilentDevice(instrument(m)));
        world("source runs away 0.2 V", "(\\w+) runs away " + NUMBER + " v",
                m -> new Fault.SourceRunaway(source(m), number(m, 2)));
        world("charger regulates high 0.4 V", "(\\w+) regulates high " + NUMBER + " v",
                m -> new Fault.ChargerHigh(source(m), number(m, 2)));
        world("tap 3 reads off -50 mV", "tap (\\d+) reads off " + NUMBER + " mv",
                m -> new Fault.TapOffset(tap(m), number(m, 2) * 1e-3));
        world("balancer works 0.2 A", "balancer works " + NUMBER + " a",
                m -> new Fault.BalancerOn(number(m, 1), BALANCE_ABOVE_V));
        world("room jumps 8 K", "room jumps " + NUMBER + " k", m -> new Fault.RoomStep(number(m, 1)));
        world("loop opens", "loop opens", _ -> new Fault.LoopOpens());
        wiring();
    }

    /** What may be wrong from the beginning, for a proof. */
    private void wiring() {
        board("taps 3 and 4 are swapped", "taps (\\d+) and (\\d+) are swapped", m -> new BoardFault.TapsSwapped(tap(m), cell(m, 2) + 1));
        board("tap 3 is reversed", "tap (\\d+) is reversed", m -> new BoardFault.InputDrifts(input(m), -1));
        board("tap 3 sits on stud 2", "tap (\\d+) sits on stud (\\d+)", m -> new BoardFault.TapOnStud(tap(m), cell(m, 2) + 1));
        board("tap 3 sits on the bar", "tap (\\d+) sits on the bar", m -> new BoardFault.TapOnBar(tap(m), 1));
        board("shunt sense is swapped", "shunt sense is swapped", _ -> new BoardFault.ShuntDrifts(-1));
        board("shunt reads beside 5 uv", "shunt reads beside " + NUMBER + " uv", m -> new BoardFault.ShuntOffset(number(m, 1) * 1e-6));
        board("probes cell_01_c and room_c are swapped", "probes (\\w+) and (\\w+) are swapped",
                m -> new BoardFault.ProbesSwapped(probe(m), probe(m.group(2))));
        board("probe cell_01_c is reversed", "probe (\\w+) is reversed", m -> new BoardFault.ProbeReversed(probe(m)));
        board("contact emergency_stop is bridged", "contact (\\w+) is bridged", m -> new BoardFault.ContactBridged(contact(m)));
        board("loop does not latch", "loop does not latch", _ -> new BoardFault.LoopForgets());
        board("links tie grounds by 200 uv", "links tie grounds by " + NUMBER + " uv", m -> new BoardFault.LinksTied(number(m, 1) * 1e-6));
        world("sink relay sticks", "(\\w+) relay sticks", m -> new Fault.Weld(relay(m)));
    }

    private Line relay(MatchResult match) {
        Device device = rig.devices().get(device(match));
        int place = rig.devices(device.charges()).indexOf(device);
        return device.charges() ? Line.source(place) : Line.sink(place);
    }

    private int contact(MatchResult match) {
        int index = rig.guards().loopContacts().indexOf(match.group(1));
        if (index < 0) {
            throw new Refused("--with: no contact of the loop is called " + match.group(1) + "; there are "
                    + String.join(", ", rig.guards().loopContacts()) + ".");
        }
        return index;
    }

    /** Place of a cell's own input among the rig's. */
    private int input(MatchResult match) {
        int cell = cell(match) + 1;
        for (int i = 0; i < rig.inputs().size(); i++) {
            if (rig.inputs().get(i).cell() == cell) {
                return i;
            }
        }
        throw new Refused("--with: cell " + cell + " has no input.");
    }

    private void world(String shown, String pattern, Function<MatchResult, Fault> fault) {
        board(shown, pattern, m -> new BoardFault.InWorld(fault.apply(m)));
    }

    private void board(String shown, String pattern, Function<MatchResult, BoardFault> fault) {
        phrases.add(new Phrase(shown, Pattern.compile(pattern), fault));
    }

    /** Reads one, or refuses it with the phrases that there are. */
    Mishap read(String words) {
        Matcher when = WHEN.matcher(words.trim().toLowerCase(Locale.ROOT).replaceAll("\\s+", " "));
        if (!when.matches()) {
            throw new Refused("--with \"" + words + "\": says no time that can be read. Write \"… at 2:00\" (hours and"
                    + " minutes from the start) or \"… at step 3 + 0:10\".");
        }
        for (Phrase phrase : phrases) {
            Matcher matcher = phrase.pattern().matcher(when.group(1));
            if (matcher.matches()) {
                int step = when.group(2) == null ? 0 : Integer.parseInt(when.group(2));
                long minutes = Long.parseLong(when.group(3)) * 60 + Long.parseLong(when.group(4));
                return new Mishap(words, phrase.fault().apply(matcher), step, minutes * 60_000_000_000L);
            }
        }
        throw new Refused("--with \"" + words + "\": no such mishap. There are, each with a time behind it:\n  "
                + String.join("\n  ", phrases.stream().map(Phrase::shown).toList()));
    }

    private int cell(MatchResult match) {
        return cell(match, 1);
    }

    private int cell(MatchResult match, int group) {
        int cell = Integer.parseInt(match.group(group));
        if (cell < 1 || cell > rig.cells().series()) {
            throw new Refused("--with: cell " + cell + " is not in this rig; it has 1…" + rig.cells().series() + ".");
        }
        return cell - 1;
    }

    private int tap(MatchResult match) {
        return cell(match) + 1;
    }

    private int device(MatchResult match) {
        List<String> names = rig.devices().stream().map(Device::name).toList();
        int index = names.indexOf(match.group(1));
        if (index < 0) {
            throw new Refused("--with: the rig has no " + match.group(1) + "; it has " + String.join(", ", names) + ".");
        }
        return index;
    }

    private int instrument(MatchResult match) {
        int device = device(match);
        if (rig.devices().get(device).switched()) {
            throw new Refused("--with: " + match.group(1) + " speaks to nobody; it cannot go silent.");
        }
        return device;
    }

    /** Place among the sources. */
    private int source(MatchResult match) {
        Device device = rig.devices().get(device(match));
        if (!device.charges()) {
            throw new Refused("--with: " + match.group(1) + " is not a source.");
        }
        return rig.devices(true).indexOf(device);
    }

    private Spot spot(MatchResult match) {
        return Spot.named(rig, match.group(1)).orElseThrow(() -> new Refused("--with: there is no spot " + match.group(1) + "; there are "
                + String.join(" · ", Spot.of(rig).stream().map(Spot::name).toList()) + "."));
    }

    private int probe(MatchResult match) {
        return probe(match.group(1));
    }

    private int probe(String name) {
        List<String> names = rig.probes().stream().map(p -> p.name()).toList();
        int index = names.indexOf(name);
        if (index < 0) {
            throw new Refused("--with: no probe is called " + name + "; there are "
                    + String.join(", ", names) + ".");
        }
        return index;
    }

    private static double number(MatchResult match, int group) {
        return Double.parseDouble(match.group(group));
    }
}
