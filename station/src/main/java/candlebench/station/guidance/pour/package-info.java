/**
 * What a stream should do now: a line through what the scale shows, and habits learnt from where earlier pours really ended.
 *
 * <p>Grams here are floating-point estimates of what will be; nothing here is recorded or judged. Verdicts are guidance's, from
 * settled exact masses.
 */
package candlebench.station.guidance.pour;
