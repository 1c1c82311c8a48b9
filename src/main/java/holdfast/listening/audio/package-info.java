/**
 * How does sound come in?
 *
 * <p>Conventions: samples are floats, full scale ±1, mono once read; rates in samples per second;
 * the ear works at one rate of its own, {@link holdfast.listening.audio.Resampler#EAR_RATE}.
 */
package holdfast.listening.audio;
