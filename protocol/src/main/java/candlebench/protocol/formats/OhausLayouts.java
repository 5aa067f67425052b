package candlebench.protocol.formats;

import static candlebench.protocol.formats.Columns.digits;
import static candlebench.protocol.formats.Columns.legend;
import static candlebench.protocol.formats.Columns.noLegend;
import static candlebench.protocol.formats.Columns.polarity;
import static candlebench.protocol.formats.Columns.text;
import static candlebench.protocol.formats.Columns.unit;
import static candlebench.protocol.formats.Columns.unitLeft;
import static candlebench.protocol.formats.Columns.unitRight;
import static candlebench.protocol.formats.Columns.unstableMark;
import static candlebench.protocol.formats.Columns.weight;

import candlebench.protocol.Decoded.InstrumentFault;
import candlebench.protocol.Decoded.TareStated;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.formats.Columns.Row;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.MassUnit;
import candlebench.shared.Stability;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/** The layouts of {@link OhausFormat}, by the models they were read for. */
final class OhausLayouts {
  private static final String SPACE = " ";

  static final List<WireLayout> ALL = List.of(
      // Navigator and Explorer: printed examples have a weight of 11, the table says 10
      line("nv", weight(11), text(SPACE), unit(), trimmed("NET")),
      line("nv-10", weight(10), text(SPACE), unit(), trimmed("NET")),
      // Scout Pro 123 to 6001, as printed in its examples and in full
      line("f1", weight(12), text(SPACE), unitLeft(5), text(SPACE), unstableMark(""), noLegend("")),
      line(
          "f1-full",
          weight(12),
          text(SPACE),
          unitLeft(5),
          text(SPACE),
          unstableMark(SPACE),
          noLegend(" ".repeat(11))),
      // Scout Pro 401, 601 and 6000
      line("f2", weight(11), text(SPACE), unit(), text(SPACE), unstableMark(SPACE), noLegend("")),
      // Scout print format 3
      line("f3", weight(11), text(SPACE), unitRight(5), unstableMark(SPACE), noLegend("")),
      // Defender 3000 by its manual, and as captured
      line(
          "d3",
          polarity(),
          text(SPACE),
          digits(7),
          text(SPACE),
          unitLeft(5),
          unstableMark(SPACE),
          legend(3, "G", "NET", "T")),
      line(
          "d3-short",
          polarity(),
          text(SPACE),
          digits(6),
          text(SPACE),
          unitLeft(5),
          unstableMark(SPACE),
          legend(1, "G", "N", "T")),
      // CKW checkweighers
      line(
          "ckw",
          polarity(),
          text(SPACE),
          digits(7),
          text(SPACE),
          unitLeft(5),
          unstableMark(SPACE),
          noLegend("")),
      // Ranger RC counting
      line(
          "rc",
          polarity(),
          text("  "),
          digits(7),
          text(SPACE),
          unitLeft(2),
          text(SPACE),
          unstableMark(SPACE),
          text(SPACE),
          legend(3, "B/G", "NET", "T")),
      // Ranger 3000
      line(
          "r3",
          weight(9),
          text(SPACE),
          unitLeft(5),
          text(SPACE),
          unstableMark(SPACE),
          text(SPACE),
          legend(3, "G", "NET", "T")),
      // Ranger 7000 and T71P
      line(
          "r7",
          weight(9),
          text(SPACE),
          unitLeft(3),
          text(SPACE),
          unstableMark(SPACE),
          text(SPACE),
          legend(1, "G", "N", "T"),
          text(" ".repeat(6))),
      // Trooper and CW-11
      line(
          "cw", weight(9), text(SPACE), unitLeft(3), unstableMark(SPACE), legend(1, "G", "N", "T")),
      // Explorer Pro, AS, AP and GT
      line("old", weight(10), text(SPACE), unitLeft(5), unstableMark(SPACE), noLegend("")),
      // Ranger 7000 and Defender 5000 in pounds and ounces
      line(
          "lboz",
          pounds(4),
          text(" lb "),
          ounces(7),
          text(" oz "),
          unstableMark(SPACE),
          text(SPACE),
          legend(1, "G", "N", "T"),
          text(" ".repeat(6))));

  private OhausLayouts() {}

  private static WireLayout line(String name, Columns.Column... columns) {
    return new Line(name, Columns.of(columns));
  }

  /** A mark while moving, and a legend where the weight is net; nothing where neither is. */
  private static Columns.Column trimmed(String net) {
    return row -> {
      if (row.stored() || row.basis() == Basis.GROSS) return Optional.empty();
      String legend = row.basis() == Basis.NET ? net : "";
      return unstableMark(SPACE)
          .of(row)
          .map(mark -> (SPACE + mark + SPACE + legend).stripTrailing());
    };
  }

  private static Columns.Column pounds(int width) {
    return row -> Fields.right(
        Fields.isNegative(row.shown()) ? "-" + parts(row)[0] : parts(row)[0].toPlainString(),
        width);
  }

  private static Columns.Column ounces(int width) {
    return row -> row.shown().unit().equals(Optional.of(MassUnit.OUNCE))
        ? Fields.right(parts(row)[1].toPlainString(), width)
        : Optional.empty();
  }

  /** Whole pounds, and the ounces over them with their decimals. */
  private static BigDecimal[] parts(Row row) {
    BigDecimal ounces = new BigDecimal(Fields.digits(row.shown()));
    BigDecimal pounds = ounces.divide(BigDecimal.valueOf(16), 0, RoundingMode.DOWN);
    return new BigDecimal[] {pounds, ounces.subtract(pounds.multiply(BigDecimal.valueOf(16)))};
  }

  private record Line(String name, Columns columns) implements TextLayout {

    @Override
    public ScaleFormat format() {
      return new OhausFormat();
    }

    @Override
    public Optional<String> weighed(Weighed said, Shown shown) {
      return written(said.indication(), said.basis(), said.stability(), false);
    }

    @Override
    public Optional<String> tareStated(TareStated said, Shown shown) {
      return written(said.indication(), Basis.UNSTATED, said.stability(), true);
    }

    private Optional<String> written(
        Indication shown, Basis basis, Stability stability, boolean stored) {
      return columns.write(new Row(shown, basis, stability, stored));
    }

    @Override
    public Optional<String> fault(InstrumentFault said, Shown shown) {
      return asSent(said, said.code());
    }
  }
}
