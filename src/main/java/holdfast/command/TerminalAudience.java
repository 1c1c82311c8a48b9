package holdfast.command;

import holdfast.command.live.Key;
import holdfast.command.live.LiveScreen;
import holdfast.motif.Motif;
import holdfast.report.JudgementText;
import holdfast.session.Audience;
import holdfast.session.Feedback;
import holdfast.session.JudgedPhrase;
import holdfast.session.Moment;
import holdfast.session.Setting;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A running take in the terminal: says as much as was asked for, and keeps the rest for the end.
 */
final class TerminalAudience implements Audience {

  private static final Logger LOG = LoggerFactory.getLogger(TerminalAudience.class);

  private final LiveScreen screen;
  private final Feedback feedback;
  private final JudgementText text;
  private final List<String> heldBack = new ArrayList<>();
  private boolean hiding;
  private boolean columnsShown;
  private boolean keysWork = true;

  TerminalAudience(LiveScreen screen, Feedback feedback, Setting setting) {
    this.screen = screen;
    this.feedback = feedback;
    this.text = new JudgementText(setting);
    text.head().forEach(screen::say);
    text.turns().ifPresent(screen::say);
    setting.givenIdea().ifPresent(given -> text.idea(given).forEach(screen::say));
  }

  @Override
  public void moment(Moment moment) {
    screen.show(moment);
  }

  @Override
  public void phrase(JudgedPhrase phrase) {
    String line = text.phrase(phrase);
    if (phrase.statesTheIdea()) {
      Motif stated = new Motif(phrase.notes(), Optional.of(phrase.chords().get(0).harmony()));
      text.idea(stated).forEach(screen::say);
    }
    boolean tells = phrase.statesTheIdea() || feedback.tellsAt(phrase.place());
    if (tells && !hiding) {
      if (!columnsShown) {
        columnsShown = true;
        screen.say(text.columns());
      }
      screen.say(line);
    } else {
      heldBack.add(line);
    }
  }

  @Override
  public void notice(String sentence) {
    screen.say(sentence);
  }

  @Override
  public Optional<Wish> wish() {
    if (!keysWork) {
      return Optional.empty();
    }
    try {
      Optional<Key> key = screen.key();
      if (key.isPresent() && key.get() == Key.HIDE) {
        hiding = !hiding;
        return Optional.empty();
      }
      return key.flatMap(TerminalAudience::wishOf);
    } catch (IOException e) {
      LOG.info("keys cannot be read any more", e);
      keysWork = false;
      return Optional.empty();
    }
  }

  /** What was held back while the take ran, in order. */
  List<String> heldBack() {
    return List.copyOf(heldBack);
  }

  private static Optional<Wish> wishOf(Key key) {
    return switch (key) {
      case STOP -> Optional.of(Wish.STOP);
      case NEW_IDEA -> Optional.of(Wish.NEW_IDEA);
      case LOOP_HERE -> Optional.of(Wish.LOOP_HERE);
      case HIDE -> Optional.empty();
    };
  }
}
