package rigwarden.notice;

import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.SendFailedException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Date;
import java.util.List;
import java.util.Properties;
import java.util.Set;

/** A notice as an e-mail, handed to one server by SMTP. */
final class Mail implements Route {
    /** How the connection is kept from being read on the way. */
    enum Security {
        /** Begun in the clear, then encrypted, or given up. */
        STARTTLS,
        /** Encrypted from the first byte. */
        TLS,
        /** In the clear. */
        NONE
    }

    /**
     * Where mail is handed in.
     *
     * @param user empty where the server wants none
     * @param password of that user
     */
    record Server(String host, int port, Security security, String user, Secret password) {}

    private final String name;
    private final Server server;
    private final String from;
    private final List<String> to;
    private final Set<What> takes;
    private final Duration patience;

    /**
     * A mailbox that nothing was sent to.
     *
     * @param patience longest time for each answer of the server
     */
    Mail(String name, Server server, String from, List<String> to, Set<What> takes, Duration patience) {
        this.name = name;
        this.server = server;
        this.from = from;
        this.to = List.copyOf(to);
        this.takes = Set.copyOf(takes);
        this.patience = patience;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public String where() {
        return "e-mail to " + String.join(", ", to) + " by " + server.host() + ":" + server.port();
    }

    @Override
    public boolean takes(What what) {
        return takes.contains(what);
    }

    @Override
    public Delivery send(Notice notice) {
        Session session = Session.getInstance(properties());
        try (Transport transport = session.getTransport("smtp")) {
            String password = server.password().read();
            boolean known = !server.user().isEmpty();
            transport.connect(server.host(), server.port(), known ? server.user() : null, known ? password : null);
            MimeMessage message = message(session, notice);
            transport.sendMessage(message, message.getAllRecipients());
            return new Delivery.Delivered("taken by the mail server");
        } catch (Secret.Missing e) {
            return new Delivery.Failed(String.valueOf(e.getMessage()), false);
        } catch (AuthenticationFailedException _) {
            return new Delivery.Failed("the mail server does not accept user and password", false);
        } catch (SendFailedException e) {
            return new Delivery.Failed("the mail server refuses it: " + Reason.of(e), true);
        } catch (MessagingException e) {
            return new Delivery.Failed(Reason.of(e), false);
        }
    }

    private Properties properties() {
        String millis = Long.toString(patience.toMillis());
        Properties properties = new Properties();
        properties.setProperty("mail.smtp.connectiontimeout", millis);
        properties.setProperty("mail.smtp.timeout", millis);
        properties.setProperty("mail.smtp.writetimeout", millis);
        properties.setProperty("mail.smtp.auth", Boolean.toString(!server.user().isEmpty()));
        properties.setProperty("mail.smtp.ssl.checkserveridentity", "true");
        properties.setProperty("mail.smtp.ssl.enable", Boolean.toString(server.security() == Security.TLS));
        properties.setProperty("mail.smtp.starttls.enable", Boolean.toString(server.security() == Security.STARTTLS));
        properties.setProperty("mail.smtp.starttls.required", Boolean.toString(server.security() == Security.STARTTLS));
        return properties;
    }

    private MimeMessage message(Session session, Notice notice) throws MessagingException {
        MimeMessage message = new MimeMessage(session);
        message.setFrom(new InternetAddress(from));
        for (String one : to) {
            message.addRecipient(Message.RecipientType.TO, new InternetAddress(one));
        }
        message.setSubject(notice.title(), StandardCharsets.UTF_8.name());
        message.setText(notice.words() + "\n\n" + notice.at() + "\n", StandardCharsets.UTF_8.name());
        message.setSentDate(Date.from(notice.at()));
        message.setHeader("X-Rigwarden-Notice", notice.id() + " " + notice.what().word());
        message.saveChanges();
        return message;
    }
}
