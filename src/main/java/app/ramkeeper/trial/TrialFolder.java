package app.ramkeeper.trial;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/** The folder that the trial run keeps, {@code data/}: the database, its passwords, the sign-in sheet. */
final class TrialFolder {

    private static final SecureRandom RANDOM = new SecureRandom();

    /** Held until the process ends, so that a second trial run stays out: a collected channel would let it in. */
    private static @Nullable FileChannel lock;

    private final Path root;

    TrialFolder(Path root) {
        this.root = root;
    }

    Path root() {
        return root;
    }

    Path database() {
        return root.resolve("postgres");
    }

    Path programs() {
        return root.resolve("postgres-programs");
    }

    /** Makes the folder, for this user only, and keeps every other trial run out of it. */
    void occupy() throws IOException {
        try {
            Files.createDirectories(root);
            ownerOnly(root, "rwx------");
            lock = FileChannel.open(root.resolve("trial.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        } catch (IOException notOurs) {
            throw new TrialRefused("The folder " + root.toAbsolutePath() + " cannot be written by "
                    + System.getProperty("user.name")
                    + ". Was it made by another user? Give it to this one, or remove it"
                    + " (its trial data goes with it).");
        }
        if (lock.tryLock() == null) {
            throw new TrialRefused(
                    "A trial run is already using " + root.toAbsolutePath() + ". Stop it first (Ctrl-C).");
        }
    }

    /** Reads the database's passwords, or makes them on the first run. */
    Properties passwords() throws IOException {
        Path file = root.resolve("database.properties");
        Properties passwords = new Properties();
        if (Files.exists(file)) {
            try (Reader reader = Files.newBufferedReader(file)) {
                passwords.load(reader);
            }
            return passwords;
        }
        for (String role : List.of(EmbeddedServer.SUPERUSER, DatabaseRoles.OWNER, DatabaseRoles.APP)) {
            passwords.setProperty(role, random());
        }
        // Without its passwords nobody ever got in: what an interrupted first run left is of no use.
        deleteAll(database());
        Path fresh = root.resolve("database.properties.new");
        try (Writer writer = Files.newBufferedWriter(fresh)) {
            ownerOnly(fresh, "rw-------");
            passwords.store(writer, "Passwords of the trial run's own database server");
        }
        return passwords;
    }

    /** Keeps the passwords once the server has taken them. */
    void passwordsAreSet() throws IOException {
        Path fresh = root.resolve("database.properties.new");
        if (Files.exists(fresh)) {
            Files.move(fresh, root.resolve("database.properties"));
        }
    }

    /** Writes a file that only this user may read. */
    void write(String name, String text) throws IOException {
        Path file = root.resolve(name);
        if (!Files.exists(file)) {
            Files.createFile(file);
        }
        ownerOnly(file, "rw-------");
        Files.writeString(file, text);
    }

    /** A password of 24 characters, 144 random bits. */
    static String random() {
        byte[] bytes = new byte[18];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    private static void ownerOnly(Path path, String permissions) throws IOException {
        if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
        }
    }

    private static void deleteAll(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (var paths = Files.walk(folder)) {
                for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }
}
