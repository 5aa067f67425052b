package candlebench.web;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/** Hears single sounds in rendered audio: when each began, how long, how high and how loud it was, and whether it was harsh. */
final class Ear {
  static final int RATE = 16_000;

  private static final int WINDOW = RATE / 250;
  private static final double AUDIBLE = 0.004;

  /** A square wave has a ninth of its fundamental's power in the third harmonic, a sine none. */
  private static final double HARSH = 0.03;

  /**
   * A sound.
   *
   * @param at when it began, in milliseconds
   * @param millis how long it was
   * @param pitch its fundamental in hertz
   * @param peak its largest sample, 0 to 1
   */
  record Sound(double at, double millis, double pitch, double peak, boolean harsh) {
    boolean isAbout(double hertz) {
      return Math.abs(pitch - hertz) < hertz * 0.03;
    }
  }

  private Ear() {}

  /** Samples that a page sent: 16 bit, little end first, as base64. */
  static double[] samples(String base64) {
    ShortBuffer shorts = ByteBuffer.wrap(Base64.getDecoder().decode(base64))
        .order(ByteOrder.LITTLE_ENDIAN)
        .asShortBuffer();
    double[] samples = new double[shorts.remaining()];
    for (int at = 0; at < samples.length; at++) samples[at] = shorts.get(at) / 32_767.0;
    return samples;
  }

  static List<Sound> hear(double[] samples) {
    List<Sound> sounds = new ArrayList<>();
    int began = -1;
    for (int at = 0; at + WINDOW <= samples.length; at += WINDOW) {
      boolean audible = peak(samples, at, at + WINDOW) > AUDIBLE;
      if (audible && began < 0) began = at;
      if (!audible && began >= 0) {
        sounds.add(sound(samples, began, at));
        began = -1;
      }
    }
    if (began >= 0) sounds.add(sound(samples, began, samples.length));
    return sounds;
  }

  static double peak(double[] samples, int from, int to) {
    double most = 0;
    for (int at = from; at < to; at++) most = Math.max(most, Math.abs(samples[at]));
    return most;
  }

  private static Sound sound(double[] samples, int from, int to) {
    double pitch = pitch(samples, from, to);
    double third = power(samples, from, to, 3 * pitch) / power(samples, from, to, pitch);
    return new Sound(
        from * 1000.0 / RATE,
        (to - from) * 1000.0 / RATE,
        pitch,
        peak(samples, from, to),
        third > HARSH);
  }

  /** By the time between the first and the last rise through zero. */
  private static double pitch(double[] samples, int from, int to) {
    double first = -1;
    double last = -1;
    int rises = 0;
    for (int at = from + 1; at < to; at++) {
      if (samples[at - 1] >= 0 || samples[at] < 0) continue;
      last = at - samples[at] / (samples[at] - samples[at - 1]);
      if (first < 0) first = last;
      else rises++;
    }
    return rises == 0 ? 0 : rises * RATE / (last - first);
  }

  /** The power at one frequency: the sum of G. Goertzel, American Mathematical Monthly 65 (1958), written out. */
  private static double power(double[] samples, int from, int to, double hertz) {
    double cos = 0;
    double sin = 0;
    for (int at = from; at < to; at++) {
      double angle = 2 * Math.PI * hertz * (at - from) / RATE;
      cos += samples[at] * Math.cos(angle);
      sin += samples[at] * Math.sin(angle);
    }
    return cos * cos + sin * sin;
  }
}
