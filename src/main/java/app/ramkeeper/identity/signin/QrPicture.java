package app.ramkeeper.identity.signin;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/**
 * A QR code (ISO/IEC 18004) as one SVG path, so that it needs no inline style and prints.
 *
 * @param size width and height in modules, the quiet zone of four included
 * @param path the dark modules
 */
public record QrPicture(int size, String path) {

    private static final int QUIET = 4;

    public static QrPicture of(String text) {
        try {
            ByteMatrix modules = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
            StringBuilder path = new StringBuilder();
            for (int y = 0; y < modules.getHeight(); y++) {
                for (int x = 0; x < modules.getWidth(); x++) {
                    if (modules.get(x, y) == 1) {
                        path.append('M')
                                .append(x + QUIET)
                                .append(' ')
                                .append(y + QUIET)
                                .append("h1v1h-1z");
                    }
                }
            }
            return new QrPicture(modules.getWidth() + 2 * QUIET, path.toString());
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException("The text does not fit into a QR code", tooLong);
        }
    }
}
