/**
 * What is said about a take, on paper, on the screen and to other programs?
 *
 * <p>Conventions: beats count from bar 1 of the first chorus; words are plain and hold no grade;
 * meaning is told by shape and word, colour only helps (Okabe and Ito's palette, which people with
 * any kind of colour vision can tell apart).
 */
package holdfast.report;
