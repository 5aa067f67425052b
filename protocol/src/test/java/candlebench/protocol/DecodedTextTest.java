package candlebench.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DecodedTextTest {
  private static final Frame FRAME = new Frame(100, new byte[] {'x'}, CorpusRow.STAMP);

  private static final List<Decoded> ONE_OF_EACH = List.of(
      new Decoded.Weighed(Indication.of("1.50", MassUnit.OUNCE), Basis.NET, Stability.UNSTATED),
      new Decoded.OutOfRange(Decoded.OutOfRange.Side.UNDER, Basis.GROSS),
      new Decoded.StatusOnly(Stability.UNSTABLE),
      new Decoded.TareStated(Indication.withoutUnit("-0.0"), Stability.STABLE),
      new Decoded.NotALoad(Decoded.NotALoad.Matter.PIECES, "12 PCS"),
      new Decoded.InstrumentFault("E01"),
      new Decoded.Acknowledged("OK"),
      new Decoded.Refused(new Refusal(Refusal.Reason.NOT_A_NUMBER, 7, "digits were expected")));

  @Test
  void every_case_has_its_words() {
    assertThat(ONE_OF_EACH.stream().map(said -> words(DecodedText.of(FRAME, said))))
        .containsExactly(
            "none|1.50|oz|net||100",
            "underload|||gross||100",
            "unstable|||unknown||100",
            "stable|-0.0||tare||100",
            "none|||unknown||100",
            "error|||unknown||100",
            "ack|||unknown||100",
            "refused|||unknown|NOT_A_NUMBER: digits were expected|107");
  }

  @Test
  void no_case_is_left_out_here() {
    Stream<Class<?>> here = ONE_OF_EACH.stream().map(Object::getClass);
    assertThat(here).containsExactlyInAnyOrder(Decoded.class.getPermittedSubclasses());
  }

  private static String words(DecodedText text) {
    return String.join(
        "|",
        text.status(),
        text.value(),
        text.unit(),
        text.kind(),
        text.reason(),
        "" + text.offset());
  }
}
