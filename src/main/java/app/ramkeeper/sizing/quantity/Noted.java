package app.ramkeeper.sizing.quantity;

import java.util.ArrayList;
import java.util.List;

/** A result with the notes that belong to it. */
public record Noted<T>(T value, List<Note> notes) {

    /** Keeps its own copy of the notes. */
    public Noted {
        notes = List.copyOf(notes);
    }

    /** A result with nothing to add. */
    public static <T> Noted<T> of(T value) {
        return new Noted<>(value, List.of());
    }

    /** A result with notes. */
    public static <T> Noted<T> of(T value, Note... notes) {
        return new Noted<>(value, List.of(notes));
    }

    /** The same with more notes after its own. */
    public Noted<T> with(List<Note> more) {
        List<Note> all = new ArrayList<>(notes);
        all.addAll(more);
        return new Noted<>(value, all);
    }

    /** Whether a note of this kind is there. */
    public boolean has(Note.Code code) {
        return notes.stream().anyMatch(note -> note.code() == code);
    }
}
