package candlebench.protocol.formats;

import static candlebench.protocol.formats.Columns.digits;
import static candlebench.protocol.formats.Columns.digitsLastBracketed;
import static candlebench.protocol.formats.Columns.noLegend;
import static candlebench.protocol.formats.Columns.polarity;
import static candlebench.protocol.formats.Columns.text;
import static candlebench.protocol.formats.Columns.unitLeft;
import static candlebench.protocol.formats.Columns.unstableMark;
import static candlebench.protocol.formats.Columns.weight;

import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.Columns.Column;
import candlebench.protocol.formats.Columns.Row;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** The layouts of {@link RadwagFormat}. */
final class RadwagLayouts {
  private static final Column SPACE = text(" ");
  private static final Columns SHORT_TARE =
      Columns.of(text("OT "), weight(9), SPACE, unitLeft(3), SPACE);
  private static final Columns LONG_TARE =
      Columns.of(text("OT    "), weight(9), SPACE, unitLeft(3));

  static final List<WireLayout> ALL = List.of(
      commanded("si", "SI "),
      commanded("s", "S  "),
      commanded("su", "SU "),
      commanded("sui", "SUI"),
      new Line(
          "print",
          "",
          Columns.of(
              unstableMark(" "), SPACE, polarity(), digits(9), SPACE, unitLeft(3), noLegend("")),
          SHORT_TARE),
      new Line(
          "verified",
          "",
          Columns.of(
              unstableMark(" "),
              SPACE,
              polarity(),
              digitsLastBracketed(11),
              SPACE,
              unitLeft(3),
              noLegend("")),
          LONG_TARE),
      new Marker());

  private RadwagLayouts() {}

  private static WireLayout commanded(String name, String command) {
    Columns weight = Columns.of(
        text(command),
        unstableMark(" "),
        SPACE,
        polarity(),
        digits(9),
        SPACE,
        unitLeft(3),
        noLegend(""));
    return new Line(name, command, weight, name.equals("si") ? LONG_TARE : SHORT_TARE);
  }

  private static String mark(OutOfRange said) {
    return said.side() == Side.OVER ? "^" : "v";
  }

  private interface Answering extends TextLayout {
    @Override
    default ScaleFormat format() {
      return new RadwagFormat();
    }

    @Override
    default Optional<String> fault(InstrumentFault said, Shown shown) {
      return asSent(said, said.code());
    }
  }

  private record Line(String name, String command, Columns weight, Columns tare)
      implements Answering {

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      return weight.write(new Row(said.indication(), said.basis(), said.stability(), false));
    }

    @Override
    public Optional<String> tareStated(TareStated said, Shown shown) {
      if (said.stability() != Stability.UNSTATED) return Optional.empty();
      return tare.write(new Row(said.indication(), Basis.UNSTATED, said.stability(), true));
    }

    /** The mark with a number beside it, zero here: some instruments send one, and it means nothing. */
    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      String zero = BigDecimal.ZERO.setScale(shown.decimals()).toPlainString();
      Indication nothing = Indication.of(zero, shown.unit());
      return weight
          .write(new Row(nothing, said.basis(), Stability.UNSTABLE, false))
          .map(line -> line.replace("?", mark(said)));
    }
  }

  /** The price scale WTC-30 prints the mark alone when out of range. */
  private record Marker() implements Answering {

    @Override
    public String name() {
      return "marker";
    }

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      return Optional.empty();
    }

    @Override
    public Optional<String> outOfRange(OutOfRange said, Shown shown) {
      return said.basis() == Basis.UNSTATED ? Optional.of(mark(said)) : Optional.empty();
    }
  }
}
