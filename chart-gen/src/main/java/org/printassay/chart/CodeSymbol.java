package org.printassay.chart;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.printassay.layout.SheetLayout;

/**
 * The sheet code as a 2-D symbol of ISO/IEC 18004: always version 3, 29 x 29 modules, so that its
 * grid is known before it is read; with as much error correction as the text leaves room for.
 */
public final class CodeSymbol {
    private static final List<ErrorCorrectionLevel> STRONGEST_FIRST =
            List.of(
                    ErrorCorrectionLevel.H,
                    ErrorCorrectionLevel.Q,
                    ErrorCorrectionLevel.M,
                    ErrorCorrectionLevel.L);

    private final ByteMatrix modules;

    private CodeSymbol(ByteMatrix modules) {
        this.modules = modules;
    }

    /**
     * The symbol of a text.
     *
     * @param text at most 77 characters of the alphanumeric mode
     * @throws IllegalArgumentException when the text does not fit
     */
    public static CodeSymbol of(String text) {
        for (ErrorCorrectionLevel level : STRONGEST_FIRST) {
            Map<EncodeHintType, Object> hints = new EnumMap<>(EncodeHintType.class);
            hints.put(EncodeHintType.QR_VERSION, SheetLayout.CODE_VERSION);
            try {
                return new CodeSymbol(Encoder.encode(text, level, hints).getMatrix());
            } catch (WriterException e) {
                // Too long for this level: the next holds more.
            }
        }
        throw new IllegalArgumentException("too long for a sheet code: " + text);
    }

    /** Modules along a side. */
    public int size() {
        return modules.getWidth();
    }

    /** Whether a module is dark; column and row from 0 at the top left. */
    public boolean dark(int column, int row) {
        return modules.get(column, row) == 1;
    }
}
