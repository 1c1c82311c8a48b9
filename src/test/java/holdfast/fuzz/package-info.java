/**
 * What does a reader do with a file that means harm? Each reader is fuzzed with coverage guidance;
 * what that found, and bombs made by hand, stay as a corpus (in {@code src/test/resources}) that
 * the normal run replays. A long run: {@code JAZZER_FUZZ=1 mvn test -Dtest='MidiFuzzTest'}.
 */
package holdfast.fuzz;
