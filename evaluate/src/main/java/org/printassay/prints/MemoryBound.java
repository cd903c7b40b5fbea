package org.printassay.prints;

import java.util.concurrent.Semaphore;
import java.util.function.Supplier;

/**
 * Lets so many prints be worked on at once that they fit into the memory the program is given. What
 * a scan needs does not grow with it without bound: it is made small for the search of markers, and
 * the rest is streamed.
 */
final class MemoryBound {
    private static final int MEGABYTE = 1 << 20;

    /** What the program itself needs, and what collecting garbage must have to spare. */
    private static final double FOR_PRINTS = 0.8;

    private static final int OWN = 40;

    /**
     * A scan of 600 samples an inch is evaluated within a heap of 40 MB, as measured; one whose
     * resolution is not known is kept larger. Twice that leaves the collector room to work.
     */
    private static final int FIRST_FILE = 100;

    private static final int FURTHER_FILE = 60;

    private final Semaphore megabytes;
    private final int all;

    private MemoryBound(int megabytes) {
        this.all = megabytes;
        this.megabytes = new Semaphore(megabytes, true);
    }

    static MemoryBound ofThisProcess() {
        long most = Runtime.getRuntime().maxMemory() / MEGABYTE;
        return new MemoryBound((int) Math.max(1, Math.min(1 << 20, FOR_PRINTS * most - OWN)));
    }

    /** Waits until there is room for a print, then works on it. */
    <T> T within(OnePrint print, Supplier<T> work) throws InterruptedException {
        return holding(Math.min(all, need(print)), work);
    }

    /** Waits until nothing else is worked on. */
    <T> T alone(Supplier<T> work) throws InterruptedException {
        return holding(all, work);
    }

    private <T> T holding(int share, Supplier<T> work) throws InterruptedException {
        megabytes.acquire(share);
        try {
            return work.get();
        } finally {
            megabytes.release(share);
        }
    }

    /** Scans of one print are read one after another; something of each is kept to the end. */
    private static int need(OnePrint print) {
        return FIRST_FILE + FURTHER_FILE * (print.files().size() - 1);
    }
}
