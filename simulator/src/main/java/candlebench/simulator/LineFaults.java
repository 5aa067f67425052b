package candlebench.simulator;

import java.time.Duration;

/**
 * How bad a line is. Each kind of fault has its own share, zero being off, so that one noisy fault cannot hide the others.
 *
 * @param cutShare of frames, how many arrive in pieces
 * @param lostShare of frames, how many never arrive
 * @param droppedShare of bytes, how many are missing
 * @param flippedShare of bytes, how many have one bit turned over
 * @param rubbishShare of frames, before how many some stray bytes arrive
 * @param delayedShare of frames, how many are held back
 * @param longestDelay how long at most, later frames waiting behind
 */
public record LineFaults(
    double cutShare,
    double lostShare,
    double droppedShare,
    double flippedShare,
    double rubbishShare,
    double delayedShare,
    Duration longestDelay) {

  public static LineFaults none() {
    return new LineFaults(0, 0, 0, 0, 0, 0, Duration.ZERO);
  }

  public LineFaults withCuts(double share) {
    return new LineFaults(
        share, lostShare, droppedShare, flippedShare, rubbishShare, delayedShare, longestDelay);
  }

  public LineFaults withLosses(double share) {
    return new LineFaults(
        cutShare, share, droppedShare, flippedShare, rubbishShare, delayedShare, longestDelay);
  }

  public LineFaults withDroppedBytes(double share) {
    return new LineFaults(
        cutShare, lostShare, share, flippedShare, rubbishShare, delayedShare, longestDelay);
  }

  public LineFaults withFlippedBits(double share) {
    return new LineFaults(
        cutShare, lostShare, droppedShare, share, rubbishShare, delayedShare, longestDelay);
  }

  public LineFaults withRubbish(double share) {
    return new LineFaults(
        cutShare, lostShare, droppedShare, flippedShare, share, delayedShare, longestDelay);
  }

  public LineFaults withDelays(double share, Duration longest) {
    return new LineFaults(
        cutShare, lostShare, droppedShare, flippedShare, rubbishShare, share, longest);
  }
}
