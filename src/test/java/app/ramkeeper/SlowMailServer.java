package app.ramkeeper;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;

/** Takes mails by RFC 5321, each after a while, and notes who sent what; so that a sender can be killed between two. */
final class SlowMailServer implements AutoCloseable {

    /** A mail that was taken: the envelope's sender, which here names the node, and the subject. */
    record Taken(String from, String subject) {}

    private final List<Taken> taken = new CopyOnWriteArrayList<>();
    private final ServerSocket door;
    private final Duration eachTakes;

    SlowMailServer(Duration eachTakes) {
        this.eachTakes = eachTakes;
        try {
            door = new ServerSocket(0, 50, InetAddress.getByName("127.0.0.1"));
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        start(this::open);
    }

    int port() {
        return door.getLocalPort();
    }

    List<Taken> taken() {
        return List.copyOf(taken);
    }

    private void open() {
        while (!door.isClosed()) {
            try {
                Socket client = door.accept();
                start(() -> talk(client));
            } catch (IOException closed) {
                return;
            }
        }
    }

    private void talk(Socket client) {
        try (client;
                BufferedReader in =
                        new BufferedReader(new InputStreamReader(client.getInputStream(), StandardCharsets.UTF_8))) {
            OutputStream out = client.getOutputStream();
            say(out, "220 drill.example");
            String from = "";
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String command = line.toUpperCase(Locale.ROOT);
                if (command.startsWith("MAIL FROM:")) {
                    from = line.replaceAll(".*<(.*)>.*", "$1");
                }
                if (command.equals("DATA")) {
                    say(out, "354 go on");
                    String subject = subject(in);
                    Thread.sleep(eachTakes.toMillis());
                    taken.add(new Taken(from, subject));
                }
                say(out, command.equals("QUIT") ? "221 bye" : "250 ok");
            }
        } catch (IOException | InterruptedException gone) {
            // the sender was killed
            Thread.currentThread().interrupt();
        }
    }

    private static String subject(BufferedReader in) throws IOException {
        String subject = "";
        for (String line = in.readLine(); !".".equals(line); line = in.readLine()) {
            if (line == null) {
                throw new IOException("The sender went away");
            }
            if (line.startsWith("Subject: ")) {
                subject = line.substring("Subject: ".length());
            }
        }
        return subject;
    }

    private static void say(OutputStream out, String line) throws IOException {
        out.write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    private static void start(Runnable work) {
        Thread thread = new Thread(work, "slow mail server");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        door.close();
    }
}
