package org.printassay.evaluation;

/** Told how far a long piece of work has come; called often, from one thread at a time. */
@FunctionalInterface
public interface Progress {
    /** Nobody looks on. */
    Progress NONE = share -> {};

    /**
     * How far it has come.
     *
     * @param share 0 to 1, never falling
     */
    void reached(double share);
}
