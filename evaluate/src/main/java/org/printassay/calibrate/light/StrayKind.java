package org.printassay.calibrate.light;

/**
 * The ways in which the neighbourhood adds to what the sensor sees of a patch. All of them together
 * make of a reflectance R the light {@code multiplier * R + added}, where both are sums over the
 * ways, the multiplier from 1; they are linear in the amounts.
 */
enum StrayKind {
    /** Light that the neighbourhood throws back onto the patch: multiplies its reflectance. */
    RETURNED {
        @Override
        double multiplies(double amount, double around) {
            return amount * around;
        }

        @Override
        double adds(double amount, double around) {
            return 0;
        }

        @Override
        double slope(double reflectance, double around) {
            return reflectance * around;
        }
    },
    /** Light scattered in the optics: replaces a little of the patch by its neighbourhood. */
    GLARE {
        @Override
        double multiplies(double amount, double around) {
            return -amount;
        }

        @Override
        double adds(double amount, double around) {
            return amount * around;
        }

        @Override
        double slope(double reflectance, double around) {
            return around - reflectance;
        }
    };

    /**
     * What it adds to the multiplier.
     *
     * @param around the neighbourhood as this way sees it ({@link ChannelLight#part})
     */
    abstract double multiplies(double amount, double around);

    /** What it adds to the light. */
    abstract double adds(double amount, double around);

    /** Change of the light by the amount. */
    abstract double slope(double reflectance, double around);
}
