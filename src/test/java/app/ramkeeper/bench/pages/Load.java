package app.ramkeeper.bench.pages;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Runs one act many times from several clients, each waiting for its answer before it asks again. */
final class Load {

    private Load() {}

    /** Something a client does once; {@code client} counts from 0, {@code turn} over all clients. */
    interface Act {
        void run(int client, int turn) throws Exception;
    }

    /** What was measured: milliseconds, and acts per second of the whole. */
    record Figures(double median, double p99, double perSecond) {}

    /** Runs the act for so long and measures nothing. */
    static void warm(int clients, int seconds, Act act) throws InterruptedException, ExecutionException {
        long until = System.nanoTime() + seconds * 1_000_000_000L;
        while (System.nanoTime() < until) {
            run(clients, 10 * clients, act);
        }
    }

    static Figures run(int clients, int turns, Act act) throws InterruptedException, ExecutionException {
        AtomicInteger next = new AtomicInteger();
        long[] times = new long[turns];
        List<Future<?>> all = new ArrayList<>();
        long start = System.nanoTime();
        ExecutorService threads = Executors.newFixedThreadPool(clients);
        try {
            for (int i = 0; i < clients; i++) {
                int client = i;
                all.add(threads.submit(() -> {
                    for (int turn = next.getAndIncrement(); turn < turns; turn = next.getAndIncrement()) {
                        long from = System.nanoTime();
                        act.run(client, turn);
                        times[turn] = System.nanoTime() - from;
                    }
                    return null;
                }));
            }
            for (Future<?> one : all) {
                one.get();
            }
        } finally {
            threads.shutdownNow();
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        Arrays.sort(times);
        return new Figures(times[turns / 2] / 1e6, times[turns * 99 / 100] / 1e6, turns / seconds);
    }
}
