package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** One file while it is read: the line of each key, and what was refused so far. */
final class Page {
    private final String file;
    private final Map<String, Integer> lines = new HashMap<>();
    private final Map<String, String> texts = new HashMap<>();
    private final List<Refusal> refusals = new ArrayList<>();
    private final List<Refusal> warnings = new ArrayList<>();

    private final Consumer<Asked> questions;

    Page(String file) {
        this(file, _ -> { });
    }

    /** A page on which every question is noted too. */
    Page(String file, Consumer<Asked> questions) {
        this.file = file;
        this.questions = questions;
    }

    /** Notes what a reader asks for. */
    void asks(Asked question) {
        questions.accept(question);
    }

    /** Remembers where a key stands and what is written there; the first place wins. */
    void seen(String key, int line, String text) {
        lines.putIfAbsent(key, line);
        texts.putIfAbsent(key, text);
    }

    /** What is written at a key; empty for a table or a missing key. */
    String text(String key) {
        return texts.getOrDefault(key, "");
    }

    /** Refuses what is written at a key. */
    void refuse(RefusalKind kind, String key, String allowed, String why, String whatToDo) {
        refuse(kind, key, text(key), allowed, why, whatToDo);
    }

    void refuse(RefusalKind kind, String key, String found, String allowed, String why, String whatToDo) {
        refuseAt(kind, lineOf(key), key, found, allowed, why, whatToDo);
    }

    void refuseAt(RefusalKind kind, int line, String key, String found, String allowed, String why, String whatToDo) {
        Refusal refusal = new Refusal(kind, file, line, key, found, allowed, why, whatToDo);
        switch (kind.weight()) {
            case REFUSED -> refusals.add(refusal);
            case UNATTENDED, NAMED -> warnings.add(refusal);
        }
    }

    /** Line of a key, or of the nearest table around it. */
    private int lineOf(String key) {
        String name = key;
        while (!lines.containsKey(name) && name.contains(".")) {
            name = name.substring(0, name.lastIndexOf('.'));
        }
        return lines.getOrDefault(name, 1);
    }

    boolean sound() {
        return refusals.isEmpty();
    }

    List<Refusal> refusals() {
        return inOrder(refusals);
    }

    List<Refusal> warnings() {
        return inOrder(warnings);
    }

    <T> Read<T> refused() {
        return new Read.Refused<>(inOrder(refusals));
    }

    /** Adds refusals that another file gave rise to. */
    void carry(List<Refusal> others) {
        refusals.addAll(others);
    }

    private static List<Refusal> inOrder(List<Refusal> list) {
        return list.stream().sorted(Comparator.comparing(Refusal::file).thenComparingInt(Refusal::line)).toList();
    }
}
