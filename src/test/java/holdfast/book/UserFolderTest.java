package holdfast.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class UserFolderTest {

  private static final Path HOME = Path.of("/home/mira");

  @Test
  void a_folder_of_the_users_own_choice_comes_first() {
    assertEquals(
        Path.of("/mnt/takes"),
        UserFolder.path(
            Map.of("HOLDFAST_HOME", "/mnt/takes", "XDG_DATA_HOME", "/x"), "Linux", HOME));
  }

  /** freedesktop.org, XDG Base Directory Specification 0.8: default of XDG_DATA_HOME. */
  @Test
  void linux_keeps_data_where_the_base_directory_specification_says() {
    assertEquals(
        Path.of("/home/mira/.local/share/holdfast"), UserFolder.path(Map.of(), "Linux", HOME));
    assertEquals(
        Path.of("/data/holdfast"),
        UserFolder.path(Map.of("XDG_DATA_HOME", "/data"), "Linux", HOME));
  }

  /** Common practice of the systems, no source. */
  @Test
  void other_systems_have_their_own_places() {
    assertEquals(
        Path.of("/home/mira/Library/Application Support/Holdfast"),
        UserFolder.path(Map.of(), "Mac OS X", HOME));
    assertEquals(
        Path.of("/roaming/Holdfast"),
        UserFolder.path(Map.of("APPDATA", "/roaming"), "Windows 11", HOME));
  }
}
