package candlebench.protocol;

import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.WireLayout.Shown;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.util.Arrays;
import java.util.Optional;

/** What to do at the scale so that two formats whose lines look alike begin to differ. Found by writing in both what would be sent. */
enum TellingApart {
  MOVE("press on the pan with a finger, so that the weight moves"),
  GO_NEGATIVE(
      "press tare with something on the pan and take it off, so that the number is negative"),
  EMPTY_THE_PAN("empty the pan and press zero"),
  REST("leave the pan alone, so that the weight comes to rest"),
  LEAVE_A_LOAD("put something on the pan, so that the number is not zero");

  private final String words;

  TellingApart(String words) {
    this.words = words;
  }

  /** What to do, in words for a person. */
  static String words(Candidate one, Candidate other) {
    for (TellingApart act : values())
      if (act.tells(one, other)) return act.words + ", and listen again";
    return "nothing they send differs: choose by the maker of the scale";
  }

  private boolean tells(Candidate one, Candidate other) {
    Optional<byte[]> byOne = sent(one);
    Optional<byte[]> byOther = sent(other);
    return byOne.isPresent() && byOther.isPresent() && !Arrays.equals(byOne.get(), byOther.get());
  }

  /** What a scale of this format would send after the act, by the layout heard. */
  private Optional<byte[]> sent(Candidate candidate) {
    Optional<WireLayout> layout = candidate.format().layouts().stream()
        .filter(each -> each.name().equals(candidate.layout()))
        .findFirst();
    if (layout.isEmpty() || candidate.lastWeighed().isEmpty()) return Optional.empty();
    Weighed before = candidate.lastWeighed().get();
    Shown shown = new Shown(before.indication().unit().orElse(MassUnit.GRAM), 0, 0);
    Optional<byte[]> sent = layout.get().encode(after(before), shown);
    return sent.isPresent() ? sent : layout.get().encode(withoutUnit(after(before)), shown);
  }

  private Weighed after(Weighed before) {
    Indication shown = before.indication();
    return switch (this) {
      case MOVE -> new Weighed(shown, before.basis(), Stability.UNSTABLE);
      case REST -> new Weighed(shown, before.basis(), Stability.STABLE);
      case EMPTY_THE_PAN -> showing("0.0", before);
      case GO_NEGATIVE -> showing("-12.5", before);
      case LEAVE_A_LOAD -> showing("12.5", before);
    };
  }

  private static Weighed showing(String number, Weighed before) {
    Indication shown = new Indication(number, before.indication().unit());
    return new Weighed(shown, before.basis(), before.stability());
  }

  private static Weighed withoutUnit(Weighed said) {
    return new Weighed(
        Indication.withoutUnit(said.indication().number()), said.basis(), said.stability());
  }
}
