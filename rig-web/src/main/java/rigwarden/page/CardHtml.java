package rigwarden.page;

import rigwarden.paper.Card;

/** A card as a part of a page. */
final class CardHtml {
    private CardHtml() {}

    static String of(Card card) {
        StringBuilder html = new StringBuilder("<section class=\"card\"><h2>").append(Html.text(card.title())).append("</h2>");
        for (Card.Part part : card.parts()) {
            String mark = switch (part.weight()) {
                case PLAIN -> "";
                case URGENT -> " class=\"urgent\"";
            };
            html.append("<div").append(mark).append("><h3>").append(Html.text(part.heading())).append("</h3><ul>");
            part.lines().forEach(line -> html.append("<li>").append(Html.text(line)).append("</li>"));
            html.append("</ul></div>");
        }
        return html.append("</section>").toString();
    }
}
