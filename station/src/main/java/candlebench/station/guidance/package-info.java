/**
 * Guidance: from what the scales show and the maker says to what is to be done and what is to be written down. Pure.
 *
 * <p>What lasts is {@link candlebench.station.guidance.BenchProgress}, a fold of events; what the bench is doing is a
 * {@code Stage}, one file each, built anew from what lasts:
 *
 * <pre>
 * Idle → PlacingPot → Weighing → … → Finished
 * </pre>
 */
package candlebench.station.guidance;
