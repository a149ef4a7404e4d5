package rigwarden.page;

/** Text made safe for HTML and SVG. */
final class Html {
    private Html() {}

    /** Text for an element's content or a quoted attribute. */
    static String text(String plain) {
        StringBuilder safe = new StringBuilder(plain.length() + 16);
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.append(c);
            }
        }
        return safe.toString();
    }

    /** An element whose text the event stream keeps up to date. */
    static String live(String tag, String id, String plain) {
        return "<" + tag + " id=\"" + text(id) + "\">" + text(plain) + "</" + tag + ">";
    }
}
