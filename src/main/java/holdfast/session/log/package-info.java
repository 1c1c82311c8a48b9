/**
 * What was played in a take that broke off?
 *
 * <p>Conventions: seconds of the take as everywhere; one line of text for each thing that happened,
 * each with a checksum in front, written at the moment it is heard. A log may end anywhere: every
 * line that is whole counts, whatever became of the rest. Checksums are CRC-32C (Castagnoli; RFC
 * 3720, appendix B.4).
 */
package holdfast.session.log;
