package app.ramkeeper.rounds.week;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TimesTests {

    @Test
    void whatPassesMidnightIsOfTheNextDay() {
        assertThat(Times.say(1439)).isEqualTo("23:59");
        assertThat(Times.say(1440)).isEqualTo("00:00 the next day");
        assertThat(Times.say(1480.4)).isEqualTo("00:40 the next day");
        assertThat(Times.say(-3)).isEqualTo("00:00");
    }
}
