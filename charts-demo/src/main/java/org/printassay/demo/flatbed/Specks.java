package org.printassay.demo.flatbed;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Dust and hairs at their places on the bed: round-ended strokes that cover the sheet. */
final class Specks {
    /** Reflectance of dirt seen from below: some light, some dark. */
    private static final double DARK = 0.12;

    private static final double LIGHT = 0.6;

    private final List<Stroke> strokes = new ArrayList<>();

    /** A stroke from one point to another on the bed, millimetres. */
    record Stroke(
            double x1,
            double y1,
            double x2,
            double y2,
            double radius,
            double reflectance,
            double cover) {
        double distance(double x, double y) {
            double dx = x2 - x1;
            double dy = y2 - y1;
            double length2 = dx * dx + dy * dy;
            double t = length2 == 0 ? 0 : ((x - x1) * dx + (y - y1) * dy) / length2;
            t = Math.min(1, Math.max(0, t));
            return Math.hypot(x - x1 - t * dx, y - y1 - t * dy);
        }
    }

    Specks(Dirt dirt, double widthMm, double heightMm, Random random) {
        for (int i = 0; i < dirt.dustMarks(); i++) {
            double x = random.nextDouble() * widthMm;
            double y = random.nextDouble() * heightMm;
            double radius = 0.05 + 0.2 * Math.pow(random.nextDouble(), 2);
            double length = radius * random.nextDouble();
            double angle = 2 * Math.PI * random.nextDouble();
            strokes.add(
                    new Stroke(
                            x,
                            y,
                            x + length * Math.cos(angle),
                            y + length * Math.sin(angle),
                            radius,
                            random.nextInt(3) == 0 ? LIGHT : DARK,
                            0.5 + 0.5 * random.nextDouble()));
        }
        for (int i = 0; i < dirt.hairs(); i++) {
            hair(random.nextDouble() * widthMm, random.nextDouble() * heightMm, random);
        }
    }

    private void hair(double startX, double startY, Random random) {
        double length = 4 + 11 * random.nextDouble();
        double angle = 2 * Math.PI * random.nextDouble();
        double bend = (random.nextDouble() - 0.5) * 0.6;
        double x = startX;
        double y = startY;
        int parts = 12;
        for (int i = 0; i < parts; i++) {
            double nextX = x + length / parts * Math.cos(angle);
            double nextY = y + length / parts * Math.sin(angle);
            strokes.add(new Stroke(x, y, nextX, nextY, 0.035, DARK, 0.8));
            x = nextX;
            y = nextY;
            angle += bend;
        }
    }

    /** Strokes that may touch a rectangle of the bed. */
    List<Stroke> near(double left, double top, double right, double bottom) {
        List<Stroke> near = new ArrayList<>();
        for (Stroke s : strokes) {
            double reach = s.radius() + 0.3;
            if (Math.max(s.x1(), s.x2()) > left - reach
                    && Math.min(s.x1(), s.x2()) < right + reach
                    && Math.max(s.y1(), s.y2()) > top - reach
                    && Math.min(s.y1(), s.y2()) < bottom + reach) {
                near.add(s);
            }
        }
        return near;
    }
}
