package rigwarden.paper;

import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** A sheet of an SVG drawing, written from top to bottom; lengths in its own units, of which a sheet is {@link #WIDTH} wide. */
final class Ink {
    static final int WIDTH = 520;
    static final int EDGE = 16;
    /** Width of an average letter as a share of its size: wide, so that no text is longer than was thought. */
    static final double LETTER = 0.63;

    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final String STYLE = """
            text{font-family:sans-serif;fill:#111}
            .power{stroke:#111;stroke-width:4;fill:none}
            .thin{stroke:#111;stroke-width:1.2;fill:none}
            .control{stroke:#111;stroke-width:1.6;stroke-dasharray:6 3;fill:none}
            .part{stroke:#111;stroke-width:1.6;fill:#fff}
            .spot{fill:#111}
            .head{font-weight:bold}
            """;

    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;

    /** A sheet of a height. */
    Ink(double height, String title) {
        try {
            xml = XMLOutputFactory.newInstance().createXMLStreamWriter(text);
            xml.writeStartDocument("UTF-8", "1.0");
            xml.writeCharacters("\n");
            xml.setDefaultNamespace(SVG);
            xml.writeStartElement(SVG, "svg");
            xml.writeDefaultNamespace(SVG);
            attributes("viewBox", "0 0 " + WIDTH + " " + number(height), "width", "100%", "role", "img");
            element("title", title);
            element("style", STYLE);
            shape("rect", "width", number(WIDTH), "height", number(height), "fill", "#fff");
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The whole drawing; nothing can be added afterwards. */
    String close() {
        try {
            xml.writeEndDocument();
            xml.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return text.append("\n").toString();
    }

    void line(String kind, double fromX, double fromY, double toX, double toY) {
        shape("line", "class", kind, "x1", number(fromX), "y1", number(fromY), "x2", number(toX), "y2", number(toY));
    }

    void box(String kind, double x, double y, double width, double height) {
        shape("rect", "class", kind, "x", number(x), "y", number(y), "width", number(width), "height", number(height));
    }

    void spot(double x, double y) {
        shape("circle", "class", "spot", "cx", number(x), "cy", number(y), "r", "5");
    }

    /** Words from x to the right edge, or to a width, in as many lines as they need. The first line's foot is at y; where the next would be. */
    double words(double x, double y, double width, int size, String kind, String words) {
        double foot = y;
        for (String line : wrapped(words, (int) (width / (size * LETTER)))) {
            try {
                xml.writeStartElement(SVG, "text");
                attributes("x", number(x), "y", number(foot), "font-size", Integer.toString(size));
                if (!kind.isEmpty()) {
                    attributes("class", kind);
                }
                xml.writeCharacters(line);
                xml.writeEndElement();
                xml.writeCharacters("\n");
            } catch (XMLStreamException e) {
                throw new IllegalStateException(e);
            }
            foot += size * 1.35;
        }
        return foot;
    }

    private static List<String> wrapped(String words, int longest) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.strip().split("\\s+", -1)) {
            String rest = word;
            if (!line.isEmpty() && line.length() + 1 + rest.length() > longest) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (rest.length() > longest) {
                lines.add(rest.substring(0, longest));
                rest = rest.substring(longest);
            }
            line.append(line.isEmpty() ? "" : " ").append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    private void shape(String name, String... attributes) {
        try {
            xml.writeEmptyElement(SVG, name);
            attributes(attributes);
            xml.writeCharacters("\n");
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private void element(String name, String content) throws XMLStreamException {
        xml.writeStartElement(SVG, name);
        xml.writeCharacters(content);
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }

    private void attributes(String... pairs) throws XMLStreamException {
        for (int at = 0; at < pairs.length; at += 2) {
            xml.writeAttribute(pairs[at], pairs[at + 1]);
        }
    }

    private static String number(double value) {
        return value == Math.rint(value) ? String.format(Locale.ROOT, "%.0f", value) : String.format(Locale.ROOT, "%.1f", value);
    }
}
