package holdfast.window;

import holdfast.window.after.AfterPage;
import holdfast.window.charts.ChartsPage;
import holdfast.window.play.TakeRequest;
import java.util.List;
import java.util.function.Function;

/** The one place where pages are named. */
final class Pages {

  /**
   * A page that can be gone to.
   *
   * @param name as {@link Desk#go} is told; {@code page.NAME} is what it is called
   * @param inRow whether it stands in the row of pages
   * @param make makes it
   */
  record Entry(String name, boolean inRow, Function<Desk, Page> make) {}

  static final List<Entry> ALL =
      List.of(
          new Entry(Desk.HOME, true, HomePage::new),
          new Entry(Desk.CHARTS, true, ChartsPage::new),
          new Entry(Desk.WAYS, true, WaysPage::new),
          new Entry(Desk.AFTER, true, AfterPage::new),
          new Entry(Desk.SETTINGS, true, SettingsPage::new),
          new Entry(Desk.CHECK_VOICE, false, desk -> new CheckPage(desk, TakeRequest.Who.VOICE)),
          new Entry(
              Desk.CHECK_KEYBOARD, false, desk -> new CheckPage(desk, TakeRequest.Who.KEYBOARD)));

  private Pages() {}
}
