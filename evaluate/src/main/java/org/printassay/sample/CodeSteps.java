package org.printassay.sample;

import java.util.Arrays;

/** How far apart the codes of a scan lie in linear light. */
final class CodeSteps {
    private CodeSteps() {}

    /**
     * Light between neighbouring codes around a value.
     *
     * @param curve linear light of each 16-bit code, ascending
     * @param codeStep 16-bit codes from one code of the scan to the next: 257 for 8 bits
     */
    static double around(float[] curve, float light, int codeStep) {
        int at = Arrays.binarySearch(curve, light);
        int code = Math.min(at < 0 ? -at - 1 : at, curve.length - 1 - codeStep);
        return Math.max(curve[code + codeStep] - curve[code], 1e-6 + 5e-4 * light);
    }
}
