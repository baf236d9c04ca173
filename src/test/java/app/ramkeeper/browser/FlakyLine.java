package app.ramkeeper.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A line between phone and server that can be cut, slow, lose an answer, or answer in the server's place. */
final class FlakyLine implements AutoCloseable {

    private static final Pattern LENGTH = Pattern.compile("(?i)content-length: (\\d+)");

    private final ServerSocket door = new ServerSocket(0, 50, InetAddress.getByName("localhost"));
    private volatile int behind;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();

    private volatile boolean cut;
    private volatile int bytesPerSecond;
    private volatile String standIn = "";

    /** How many coming posts reach the server and have their answer lost. */
    final AtomicInteger losesAnswers = new AtomicInteger();

    /** Which coming photo has the line cut in its middle, for good; 0 for none. */
    final AtomicInteger cutsPhoto = new AtomicInteger();

    /** Posts to the intake that passed. */
    final AtomicInteger posts = new AtomicInteger();

    FlakyLine(int behind) throws IOException {
        this.behind = behind;
        Thread accepting = new Thread(this::accept, "flaky-line");
        accepting.setDaemon(true);
        accepting.start();
    }

    int port() {
        return door.getLocalPort();
    }

    /** Leads to another port from now on. */
    void leadsTo(int server) {
        behind = server;
        hangUp();
    }

    void cut(boolean now) {
        cut = now;
        hangUp();
    }

    /** Slows the line down; 0 for full speed. */
    void slow(int bytes) {
        bytesPerSecond = bytes;
        hangUp();
    }

    /** Answers everything itself, as a captive portal does; empty for the server's own answers. */
    void answers(String wholeAnswer) {
        standIn = wholeAnswer;
        hangUp();
    }

    private void hangUp() {
        open.forEach(FlakyLine::shut);
        open.clear();
    }

    private void accept() {
        while (!door.isClosed()) {
            try {
                Socket phone = door.accept();
                if (cut) {
                    shut(phone);
                    continue;
                }
                open.add(phone);
                Thread talking = new Thread(() -> talk(phone), "flaky-line-talk");
                talking.setDaemon(true);
                talking.start();
            } catch (IOException closed) {
                return;
            }
        }
    }

    private void talk(Socket phone) {
        try (phone;
                Socket server = new Socket(InetAddress.getByName("localhost"), behind)) {
            open.add(server);
            boolean[] lose = {false};
            Thread up = new Thread(() -> pass(phone, server, true, lose), "flaky-line-up");
            up.setDaemon(true);
            up.start();
            pass(server, phone, false, lose);
        } catch (IOException over) {
            shut(phone);
        }
    }

    private void pass(Socket from, Socket to, boolean fromPhone, boolean[] lose) {
        byte[] chunk = new byte[8192];
        long passes = Long.MAX_VALUE;
        try {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
                String start = new String(chunk, 0, Math.min(n, 200), StandardCharsets.ISO_8859_1);
                if (fromPhone && !standIn.isEmpty()) {
                    from.getOutputStream().write(standIn.getBytes(StandardCharsets.UTF_8));
                    break;
                }
                if (fromPhone && start.startsWith("POST /field/")) {
                    posts.incrementAndGet();
                    lose[0] = losesAnswers.getAndUpdate(left -> Math.max(0, left - 1)) > 0;
                }
                if (fromPhone && start.startsWith("POST /field/photos") && cutsPhoto.getAndDecrement() == 1) {
                    passes = half(new String(chunk, 0, n, StandardCharsets.ISO_8859_1));
                }
                if (n >= passes) {
                    out.write(chunk, 0, (int) passes);
                    out.flush();
                    cut(true);
                    break;
                }
                passes -= passes == Long.MAX_VALUE ? 0 : n;
                if (!fromPhone && lose[0]) {
                    break;
                }
                rest(n);
                out.write(chunk, 0, n);
                out.flush();
            }
        } catch (IOException over) {
            // hung up
        }
        shut(from);
        shut(to);
    }

    /** The bytes of a post up to the middle of its body. */
    private static long half(String post) {
        Matcher length = LENGTH.matcher(post);
        if (!length.find()) {
            throw new IllegalStateException("A post without its length: " + post);
        }
        return post.indexOf("\r\n\r\n") + 4L + Long.parseLong(length.group(1)) / 2;
    }

    private void rest(int bytes) {
        if (bytesPerSecond > 0) {
            try {
                Thread.sleep(1000L * bytes / bytesPerSecond);
            } catch (InterruptedException stop) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private static void shut(Socket socket) {
        try {
            socket.close();
        } catch (IOException gone) {
            // it is gone
        }
    }

    @Override
    public void close() throws IOException {
        door.close();
        hangUp();
    }
}
