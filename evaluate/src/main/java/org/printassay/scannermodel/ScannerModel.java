package org.printassay.scannermodel;

import org.jspecify.annotations.Nullable;
import org.printassay.colour.Lab;
import org.printassay.colour.LinearRgb;
import org.printassay.colour.Xyz;

/** From linear device light to colour: a root polynomial and what it leaves over, made smooth. */
public final class ScannerModel {
    private final RootPolynomial polynomial;
    private final @Nullable SmoothResidual residual;

    ScannerModel(RootPolynomial polynomial, @Nullable SmoothResidual residual) {
        this.polynomial = polynomial;
        this.residual = residual;
    }

    /** CIELAB of a light, D50, 2 degrees. */
    public Lab lab(LinearRgb light) {
        Lab seen = Lab.of(polynomial.at(light), Xyz.PCS_WHITE);
        return residual == null ? seen : residual.added(seen);
    }

    /** Tristimulus values of a light, Y = 100 for the perfect diffuser. */
    public Xyz xyz(LinearRgb light) {
        return lab(light).toXyz(Xyz.PCS_WHITE);
    }

    /** Order of the polynomial, 2 or 3. */
    public int order() {
        return polynomial.order();
    }

    /** Whether what the polynomial leaves over was predicted too. */
    public boolean smoothed() {
        return residual != null;
    }

    RootPolynomial polynomial() {
        return polynomial;
    }

    @Nullable SmoothResidual residual() {
        return residual;
    }
}
