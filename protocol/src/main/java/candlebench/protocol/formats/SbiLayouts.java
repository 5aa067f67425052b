package candlebench.protocol.formats;

import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.util.List;
import java.util.Optional;

/** The layouts of {@link SbiFormat}: with and without ID, with words or letters for what is out of range, with brackets. */
final class SbiLayouts {

  static final List<WireLayout> ALL = List.of(
      new Line("short", false, false, "High", "Low"),
      new Line("short-letters", false, false, "H", "L"),
      new Line("long", true, false, "H", "L"),
      new Line("long-words", true, false, "High", "Low"),
      new Line("printer", false, true, "High", "Low"));

  private SbiLayouts() {}

  private record Line(String name, boolean identified, boolean bracketed, String high, String low)
      implements TextLayout {

    @Override
    public ScaleFormat format() {
      return new SbiFormat();
    }

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      if (identified == (said.basis() == Basis.UNSTATED)) return Optional.empty();
      return measured(id(said.basis()), said.indication(), said.stability());
    }

    @Override
    public Optional<String> tareStated(TareStated said, Shown shown) {
      return identified
          ? measured("T1    ", said.indication(), said.stability())
          : Optional.empty();
    }

    /** The unit is left out while the weight moves. */
    private Optional<String> measured(String id, Indication indication, Stability stability) {
      boolean stable = indication.unit().isPresent();
      if (stability != (stable ? Stability.STABLE : Stability.UNSTABLE)) return Optional.empty();
      String digits = Fields.digits(indication);
      String shown = bracketed ? lastBracketed(digits) : digits + " ";
      return Fields.right(shown, 10)
          .flatMap(number -> Fields.left(Fields.unit(indication), 3)
              .map(unit -> id + Fields.sign(indication, '+') + number + unit));
    }

    private static String lastBracketed(String digits) {
      int last = digits.length() - 1;
      return digits.substring(0, last) + "[" + digits.charAt(last) + "]";
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      if (said.basis() != Basis.UNSTATED) return Optional.empty();
      return special("      " + (said.side() == Side.OVER ? high : low));
    }

    @Override
    public Optional<String> fault(InstrumentFault said, Shown shown) {
      boolean oneLetter = said.code().startsWith("E ");
      return special((oneLetter ? "     " : "   ") + said.code())
          .flatMap(text -> asSent(said, text));
    }

    private Optional<String> special(String text) {
      return Fields.left(text, SbiFormat.SHORT).map(field -> identified ? "Stat  " + field : field);
    }

    private String id(Basis basis) {
      return switch (basis) {
        case GROSS -> "G#    ";
        case NET -> "N     ";
        case UNSTATED -> "";
      };
    }
  }
}
