package rigwarden.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import rigwarden.rigfile.WrittenCase;
import rigwarden.warden.Warden;

/** Many cases, on as many threads as there are processors; what comes of each does not depend on them. */
public final class Campaign {
    private final List<Scene> scenes;
    private final int specimens;
    private final int threads;

    /**
     * A campaign before its first case.
     *
     * @param specimens of each scene, from 1: other errors of the parts, other noise
     * @param threads from 1
     */
    public Campaign(List<Scene> scenes, int specimens, int threads) {
        this.scenes = List.copyOf(scenes);
        this.specimens = specimens;
        this.threads = threads;
    }

    /** Rehearses every scene without a fault, in every specimen. */
    public List<Night> nights() {
        try (ExecutorService workers = Executors.newFixedThreadPool(threads)) {
            List<Future<Night>> nights = new ArrayList<>();
            for (int specimen = 1; specimen <= specimens; specimen++) {
                long seed = specimen;
                scenes.forEach(scene -> nights.add(workers.submit(() -> Night.of(scene, seed))));
            }
            return nights.stream().map(Campaign::got).toList();
        }
    }

    /**
     * Runs the cases with these numbers.
     *
     * @param done told how many are done, by any thread
     */
    public List<Outcome> run(List<Night> nights, long seed, List<Integer> numbers, IntConsumer done) {
        CaseDraw draw = new CaseDraw(seed, nights);
        return run(numbers.size(), i -> draw.draw(numbers.get(i)), done);
    }

    /** The case with a number, not run. */
    public static Case draw(List<Night> nights, long seed, int number) {
        return new CaseDraw(seed, nights).draw(number);
    }

    /** Runs cases that somebody wrote, each on every night. */
    public List<Outcome> run(List<Night> nights, List<WrittenCase> written) {
        List<Case> cases = WrittenCases.of(nights, written);
        return run(cases.size(), cases::get, _ -> { });
    }

    /** Runs cases again, each under a warden of its own, in the same order. */
    public List<Outcome> again(List<Case> cases, List<Warden> judges) {
        return each(cases.size(), i -> CaseRun.of(cases.get(i), judges.get(i)), _ -> { });
    }

    /**
     * Runs again what was unsafe although no order seems to prevent it, with STOP pressed in the very scan in which the fault comes (of a pair the last that came
     * before anything was unsafe) and everything else the same: what is unsafe then too, no rig that is faster or wiser could have kept safe.
     *
     * @param outcomes of any cases; only those that are {@link Outcome#unsafeThoughOff} or {@link Outcome#unsafeAtOnce} are run
     */
    public List<Outcome> stopped(List<Outcome> outcomes) {
        List<Case> cases = outcomes.stream().filter(Outcome::beyondOrders).map(o -> o.what().first(o.struck())).toList();
        return each(cases.size(), i -> CaseRun.stopped(cases.get(i)), _ -> { });
    }

    private List<Outcome> run(int cases, IntFunction<Case> made, IntConsumer done) {
        return each(cases, i -> CaseRun.of(made.apply(i)), done);
    }

    private List<Outcome> each(int cases, IntFunction<Outcome> run, IntConsumer done) {
        AtomicInteger count = new AtomicInteger();
        try (ExecutorService workers = Executors.newFixedThreadPool(threads)) {
            List<Future<Outcome>> outcomes = IntStream.range(0, cases).mapToObj(i -> workers.submit(() -> {
                Outcome outcome = run.apply(i);
                done.accept(count.incrementAndGet());
                return outcome;
            })).toList();
            return outcomes.stream().map(Campaign::got).toList();
        }
    }

    private static <T> T got(Future<T> future) {
        try {
            return future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause().getMessage(), e.getCause());
        }
    }
}
