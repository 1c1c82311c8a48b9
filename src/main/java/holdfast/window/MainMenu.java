package holdfast.window;

import holdfast.session.Audience.Wish;
import holdfast.window.part.Kit;
import java.awt.Toolkit;
import java.awt.event.KeyEvent;
import java.util.Locale;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.KeyStroke;

/** The menu: everything that can be reached by keys, with the keys beside it. */
final class MainMenu {

  private static final int TEXT_STEP = 10;

  private MainMenu() {}

  static JMenuBar of(Desk desk, Runnable close) {
    Words words = desk.words();
    JMenuBar bar = new JMenuBar();
    JMenu go = menu(words, "menu.go");
    int number = 1;
    for (Pages.Entry entry : Pages.ALL) {
      if (entry.where() != Pages.Where.BESIDE) {
        JMenuItem item = item(words, "page." + entry.name(), () -> desk.go(entry.name()));
        item.setAccelerator(shortcut(KeyEvent.VK_0 + number++));
        item.setEnabled(!desk.isPlaying());
        go.add(item);
      }
    }
    go.addSeparator();
    JMenuItem quit = item(words, "menu.quit", close);
    quit.setAccelerator(shortcut(KeyEvent.VK_Q));
    go.add(quit);
    bar.add(go);
    bar.add(take(desk));
    bar.add(view(desk));
    return bar;
  }

  private static JMenu take(Desk desk) {
    Words words = desk.words();
    JMenu take = menu(words, "menu.take");
    boolean runs = desk.isPlaying();
    JMenuItem stop = item(words, "play.stop", () -> desk.ask(Wish.STOP));
    JMenuItem idea = item(words, "play.new-idea", () -> desk.ask(Wish.NEW_IDEA));
    JMenuItem loop = item(words, "play.loop", () -> desk.ask(Wish.LOOP_HERE));
    for (JMenuItem item : new JMenuItem[] {stop, idea, loop}) {
      item.setEnabled(runs);
      take.add(item);
    }
    return take;
  }

  private static JMenu view(Desk desk) {
    Words words = desk.words();
    JMenu view = menu(words, "menu.view");
    JMenuItem larger = item(words, "menu.larger", () -> resize(desk, TEXT_STEP));
    larger.setAccelerator(shortcut(KeyEvent.VK_PLUS));
    JMenuItem smaller = item(words, "menu.smaller", () -> resize(desk, -TEXT_STEP));
    smaller.setAccelerator(shortcut(KeyEvent.VK_MINUS));
    JMenuItem dark = item(words, "menu.other-paper", () -> otherPaper(desk));
    dark.setAccelerator(shortcut(KeyEvent.VK_D));
    for (JMenuItem item : new JMenuItem[] {larger, smaller, dark}) {
      item.setEnabled(!desk.isPlaying());
      view.add(item);
    }
    view.addSeparator();
    for (Language language : Language.values()) {
      JMenuItem item = new JMenuItem(language.ownName());
      item.setName("language." + language.name().toLowerCase(Locale.ROOT));
      item.setEnabled(!desk.isPlaying());
      item.addActionListener(event -> desk.change(desk.preferences().with("language", language)));
      view.add(item);
    }
    return view;
  }

  private static void resize(Desk desk, int by) {
    int percent =
        Math.max(
            Preferences.SMALLEST_TEXT,
            Math.min(Preferences.LARGEST_TEXT, desk.preferences().textPercent() + by));
    desk.change(desk.preferences().with("text-size", Integer.toString(percent)));
  }

  private static void otherPaper(Desk desk) {
    Preferences.Theme other =
        desk.preferences().theme() == Preferences.Theme.DARK
            ? Preferences.Theme.LIGHT
            : Preferences.Theme.DARK;
    desk.change(desk.preferences().with("theme", other));
  }

  private static JMenu menu(Words words, String key) {
    JMenu menu = new JMenu();
    Kit.label(menu, words.say(key));
    menu.setName(key);
    return menu;
  }

  private static JMenuItem item(Words words, String key, Runnable action) {
    JMenuItem item = new JMenuItem();
    Kit.label(item, words.say(key));
    item.setName("menu:" + key);
    item.addActionListener(event -> action.run());
    return item;
  }

  private static KeyStroke shortcut(int key) {
    return KeyStroke.getKeyStroke(key, Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx());
  }
}
