package holdfast.window;

import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.TransferHandler;

/** Files that are dropped on a part of the window come in there. */
public final class FileDrop extends TransferHandler {

  private static final long serialVersionUID = 1L;

  private final transient Consumer<Path> in;

  /** Each file that is dropped is given to this. */
  public FileDrop(Consumer<Path> in) {
    this.in = in;
  }

  @Override
  public boolean canImport(TransferSupport support) {
    return support.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
  }

  @Override
  public boolean importData(TransferSupport support) {
    try {
      Object dropped = support.getTransferable().getTransferData(DataFlavor.javaFileListFlavor);
      if (dropped instanceof List<?> files) {
        for (Object file : files) {
          if (file instanceof File there) {
            in.accept(there.toPath());
          }
        }
      }
      return true;
    } catch (UnsupportedFlavorException | IOException e) {
      // What was dragged is gone by now; nothing came in.
      return false;
    }
  }
}
