package app.ramkeeper.visits.files;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.springframework.http.HttpStatus;

/** Makes a picture anew from its pixels: whatever else the file held stays behind. */
final class Redrawing {

    private Redrawing() {}

    /** A picture as it is kept. */
    record Made(String mediaType, byte[] content) {}

    /**
     * Decodes, turns upright, scales down and encodes.
     *
     * @throws PhotoRefused if it is no JPEG or PNG or has too many pixels
     */
    static Made of(byte[] content, PhotoKind kind, int orientation, PhotoSettings settings) {
        return draw(content, kind, orientation, settings.longestSide(), settings.maxMegapixels(), 0.85f);
    }

    /** For a phone's small screen: what is kept already stands upright. */
    static Made smaller(byte[] content, PhotoKind kind, int side) {
        return draw(content, kind, 1, side, Integer.MAX_VALUE, 0.7f);
    }

    private static Made draw(
            byte[] content, PhotoKind kind, int orientation, int side, int maxMegapixels, float quality) {
        try (MemoryCacheImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(content))) {
            Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(kind.format());
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, true);
                BufferedImage pixels = decode(reader, side, maxMegapixels);
                return new Made(kind.mediaType(), encode(upright(pixels, orientation, side), kind, quality));
            } finally {
                reader.dispose();
            }
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException broken) {
            throw new PhotoRefused(
                    HttpStatus.UNPROCESSABLE_CONTENT, "This picture is damaged and cannot be read. Take it again.");
        }
    }

    private static BufferedImage decode(ImageReader reader, int side, int maxMegapixels) throws IOException {
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > maxMegapixels * 1_000_000L) {
            throw new PhotoRefused(
                    HttpStatus.CONTENT_TOO_LARGE,
                    "This picture has more than " + maxMegapixels + " megapixels. Send a smaller one.");
        }
        ImageReadParam param = reader.getDefaultReadParam();
        // Reading every n-th pixel keeps memory small; what is left is at least as large as the picture that is kept.
        int step = Math.max(1, Math.max(width, height) / side);
        param.setSourceSubsampling(step, step, 0, 0);
        return reader.read(0, param);
    }

    private static BufferedImage upright(BufferedImage pixels, int orientation, int longestSide) {
        int width = pixels.getWidth();
        int height = pixels.getHeight();
        double scale = Math.min(1.0, (double) longestSide / Math.max(width, height));
        boolean turned = orientation >= 5;
        int across = Math.max(1, (int) Math.round(scale * (turned ? height : width)));
        int down = Math.max(1, (int) Math.round(scale * (turned ? width : height)));
        boolean clear = pixels.getColorModel().hasAlpha();
        BufferedImage drawn =
                new BufferedImage(across, down, clear ? BufferedImage.TYPE_INT_ARGB : BufferedImage.TYPE_INT_RGB);
        AffineTransform transform = AffineTransform.getScaleInstance(scale, scale);
        transform.concatenate(turn(orientation, width, height));
        Graphics2D pen = drawn.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        pen.drawImage(pixels, transform, null);
        pen.dispose();
        return drawn;
    }

    /** Where a stored point (x, y) belongs when the picture stands upright (Exif orientation 1 to 8). */
    private static AffineTransform turn(int orientation, int w, int h) {
        return switch (orientation) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
            default -> new AffineTransform();
        };
    }

    private static byte[] encode(BufferedImage pixels, PhotoKind kind, float quality) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName(kind.format()).next();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream image = new MemoryCacheImageOutputStream(out)) {
            writer.setOutput(image);
            ImageWriteParam param = writer.getDefaultWriteParam();
            if (kind == PhotoKind.JPEG) {
                param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                param.setCompressionQuality(quality);
            }
            writer.write(null, new IIOImage(pixels, null, null), param);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }
}
