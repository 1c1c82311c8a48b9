package holdfast.practice;

import holdfast.backing.Playback;
import holdfast.session.Audience;
import holdfast.session.JudgedPhrase;
import holdfast.session.Moment;
import java.util.Optional;

/**
 * An audience whose lesson goes its way: who speaks when is settled, so bars cannot be looped in
 * the middle of it. All other wishes are handed on.
 */
record Steadfast(Audience audience) implements Audience {

  @Override
  public void moment(Moment moment) {
    audience.moment(moment);
  }

  @Override
  public void phrase(JudgedPhrase phrase) {
    audience.phrase(phrase);
  }

  @Override
  public void begins(Playback playback) {
    audience.begins(playback);
  }

  @Override
  public void notice(String sentence) {
    audience.notice(sentence);
  }

  @Override
  public Optional<Wish> wish() {
    Optional<Wish> wish = audience.wish();
    if (wish.equals(Optional.of(Wish.LOOP_HERE))) {
      audience.notice("We take turns here, so no bars are looped; climb goes round hard bars.");
      return Optional.empty();
    }
    if (wish.equals(Optional.of(Wish.SLOWER)) || wish.equals(Optional.of(Wish.FASTER))) {
      audience.notice("The tempo stays while we take turns.");
      return Optional.empty();
    }
    return wish;
  }
}
