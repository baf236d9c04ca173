package app.ramkeeper.visits.files;

import org.springframework.http.HttpStatus;

/** Says why a photo was not taken; the message is written for the person. */
public class PhotoRefused extends RuntimeException {

    private final HttpStatus status;

    PhotoRefused(HttpStatus status, String sentence) {
        super(sentence);
        this.status = status;
    }

    public HttpStatus status() {
        return status;
    }

    public String sentence() {
        return String.valueOf(getMessage());
    }
}
