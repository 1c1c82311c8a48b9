package holdfast.window.play;

import holdfast.book.TakeFolder;
import holdfast.session.JudgedTake;
import java.util.Optional;

/**
 * A take that has been played to its end.
 *
 * @param request what was asked for
 * @param judged what was heard
 * @param folder where it is kept; a take of the demo student is not
 */
public record FinishedTake(TakeRequest request, JudgedTake judged, Optional<TakeFolder> folder) {}
