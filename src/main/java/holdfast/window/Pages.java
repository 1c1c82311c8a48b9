package holdfast.window;

import holdfast.window.after.AfterPage;
import holdfast.window.book.BookPage;
import holdfast.window.book.OverviewPage;
import holdfast.window.book.TaskPage;
import holdfast.window.calibration.CalibrationPage;
import holdfast.window.charts.ChartsPage;
import holdfast.window.invent.InventPage;
import holdfast.window.play.TakeRequest;
import java.util.List;
import java.util.function.Function;

/** The one place where pages are named. */
final class Pages {

  /**
   * A page that can be gone to.
   *
   * @param name as {@link Desk#go} is told; {@code page.NAME} is what it is called
   * @param where where it is offered
   * @param make makes it
   */
  record Entry(String name, Where where, Function<Desk, Page> make) {}

  /** Where a page is offered. */
  enum Where {
    /** In the row of pages and in the menu. */
    ROW,
    /** In the menu, and on the page that it belongs to. */
    MENU,
    /** Only on the page that it belongs to. */
    BESIDE
  }

  static final List<Entry> ALL =
      List.of(
          new Entry(Desk.HOME, Where.ROW, HomePage::new),
          new Entry(Desk.CHARTS, Where.ROW, ChartsPage::new),
          new Entry(Desk.WAYS, Where.ROW, WaysPage::new),
          new Entry(Desk.INVENT, Where.MENU, InventPage::new),
          new Entry(Desk.BOOK, Where.ROW, BookPage::new),
          new Entry(Desk.TASK, Where.BESIDE, TaskPage::new),
          new Entry(Desk.CLASS, Where.MENU, OverviewPage::new),
          new Entry(Desk.CALIBRATE, Where.MENU, CalibrationPage::new),
          new Entry(Desk.AFTER, Where.ROW, AfterPage::new),
          new Entry(Desk.SETTINGS, Where.ROW, SettingsPage::new),
          new Entry(
              Desk.CHECK_VOICE, Where.BESIDE, desk -> new CheckPage(desk, TakeRequest.Who.VOICE)),
          new Entry(
              Desk.CHECK_KEYBOARD,
              Where.BESIDE,
              desk -> new CheckPage(desk, TakeRequest.Who.KEYBOARD)));

  private Pages() {}
}
