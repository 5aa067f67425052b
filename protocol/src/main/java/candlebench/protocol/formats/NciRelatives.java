package candlebench.protocol.formats;

import static candlebench.protocol.formats.Say.GROSS;
import static candlebench.protocol.formats.Say.NET;
import static candlebench.protocol.formats.Say.OUT;
import static candlebench.protocol.formats.Say.STABLE;
import static candlebench.protocol.formats.Say.UNSTABLE;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.OutOfRange;
import candlebench.protocol.Decoded.StatusOnly;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Ending;
import candlebench.protocol.Frame;
import candlebench.protocol.Refusal.Reason;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.protocol.WireLayout.Shown;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Stability;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * What scales of the {@link NciFormat} send in their other modes.
 *
 * <p>Sources: Adam MDW 2012 table 1 (continuous); Ohaus Courier 7000 6.3.2 EN-37 to EN-39, Rice Lake BenchPro p.26, Mettler Toledo DIVA
 * service manual 72191202 p.39 and p.44-45 (8213); Fairbanks 2800 50647 rev 9 p.68. The Fairbanks terminator is not printed; any is read.
 */
final class NciRelatives {
  private static final char STX = 0x02;
  private static final int STX_TO_CR_BITS = 0x7F;

  private NciRelatives() {}

  private static final ScaleFormat MDW_CONTINUOUS = PublishedFormat.ofLines(
          "nci/mdw-cont",
          "NCI scales, continuous output (Adam MDW)",
          "Adam MDW 2012 table 1",
          NciFormat.lineSettings(),
          NciRelatives::continuous,
          List.of(new Continuous()))
      .endedBy(NciFormat::lengthOfMessage)
      .asked(NciFormat.COMMANDS);

  private static final ScaleFormat MODE_8213 = PublishedFormat.ofLines(
          "nci/8213",
          "8213 protocol",
          "Ohaus Courier 7000 EN-37 to EN-39; Rice Lake BenchPro p.26; Mettler Toledo DIVA p.39 and p.44-45",
          NciFormat.lineSettings(),
          NciRelatives::mode8213,
          List.of(
              new Mode8213("plain", "", false),
              new Mode8213("net", "N", false),
              new Mode8213("unit", "", true)))
      .endedBy(Ending.between(STX, '\r', STX_TO_CR_BITS))
      .asked(Commands.ending("").with(ScaleCommand.SEND, "W"));

  /** {@code " 012.34 lb GR"}: the legend in small letters while the weight moves. */
  private static final LineTable FAIRBANKS_LINE = LineTable.of(
      new Fixed(" "),
      WeightField.signedSpaces(6).orWords(List.of("--oL--"), List.of("--uL--")),
      new Fixed(" "),
      UnitField.right(2),
      new Fixed(" "),
      Choice.of("GR", GROSS, STABLE)
          .or("NT", NET, STABLE)
          .or("gr", GROSS, UNSTABLE)
          .or("nt", NET, UNSTABLE)
          .or("GR", GROSS, OUT)
          .or("NT", NET, OUT));

  private static final ScaleFormat FAIRBANKS = PublishedFormat.ofLines(
          "nci/2800",
          "Fairbanks 2800 replies",
          "Fairbanks 2800 50647 rev 9 p.68",
          NciFormat.lineSettings(),
          NciRelatives::fairbanks,
          List.of(TableLayout.line("reply", FAIRBANKS_LINE, NciRelatives::fairbanks)))
      .asked(Commands.ending("\r").with(ScaleCommand.SEND, "W"));

  static final List<ScaleFormat> ALL = List.of(MDW_CONTINUOUS, MODE_8213, FAIRBANKS);

  /** Reading, unit, GR or NT; the replies to commands are those of the NCI protocol. */
  private static Decoded continuous(Frame frame) {
    LineText text = LineText.ofSevenBits(frame);
    int end = text.length() - 2;
    boolean gross = text.endsWith("GR\r" + NciFormat.ETX);
    if (!gross && !text.endsWith("NT\r" + NciFormat.ETX)) return NciFormat.read(text);
    if (!text.take('\n'))
      return text.notThisFormat("a reading begins with LF: its beginning was lost");
    Draft draft = new Draft();
    draft.say(gross ? GROSS : NET, "");
    NciFormat.weight(text.upTo(end - 2), draft);
    return draft.decoded(text);
  }

  /** Polarity and eight characters, unit, legend. */
  private record Continuous() implements WireLayout {
    private static final int WIDTH = 9;

    @Override
    public String name() {
      return "continuous";
    }

    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      if (!(said instanceof Weighed weighed)
          || weighed.stability() != Stability.UNSTATED
          || weighed.basis() == Basis.UNSTATED
          || weighed.indication().unit().isEmpty()) return Optional.empty();
      Indication number = weighed.indication();
      String legend = weighed.basis() == Basis.GROSS ? "GR" : "NT";
      return Fields.right(number.number(), WIDTH)
          .map(digits -> "\n" + digits + Fields.unit(number) + legend + "\r" + NciFormat.ETX)
          .map(text -> text.getBytes(StandardCharsets.US_ASCII));
    }
  }

  private static Decoded fairbanks(Frame frame) {
    return LineText.read(frame, FAIRBANKS_LINE::read);
  }

  /** STX, weight, N for net or the unit, CR; or STX, a question mark, a status byte, CR. */
  private static Decoded mode8213(Frame frame) {
    LineText text = LineText.ofSevenBits(frame);
    if (!text.endsWith("\r"))
      return text.moveTo(text.length())
          .refused(Reason.CUT_SHORT, "a reply ends with CR: its end was lost");
    if (!text.take(STX))
      return text.notThisFormat("a reply begins with STX: its beginning was lost");
    LineText reply = text.upTo(text.length() - 1);
    if (reply.take('?')) return status8213(reply);
    Optional<String> number = reply.number();
    if (number.isEmpty()) return reply.notANumber();
    if (reply.isLast("N"))
      return reply.weighed(number.get(), WireUnit.NONE, Basis.NET, Stability.UNSTATED);
    Optional<WireUnit> unit = reply.unit();
    if (unit.isEmpty() || !reply.atEnd()) return reply.unknownUnit();
    return reply.weighed(number.get(), unit.get(), Basis.UNSTATED, Stability.UNSTATED);
  }

  /**
   * Bits 0 motion, 1 over, 2 under zero, 3 outside the range of zero; bit 6 is always set. Bit 5, net, is always set on some scales and
   * tells nothing.
   */
  private static Decoded status8213(LineText reply) {
    if (reply.left() != 1) return reply.wrongLength();
    int bits = reply.next();
    if ((bits & 0x40) == 0)
      return reply.refused(Reason.UNKNOWN_HEADER, "no status byte: a byte was lost or hit");
    if ((bits & 8) != 0)
      return new Decoded.InstrumentFault(reply.text(reply.place() - 1, reply.length()));
    if ((bits & 2) != 0) return new OutOfRange(OutOfRange.Side.OVER, Basis.UNSTATED);
    if ((bits & 4) != 0) return new OutOfRange(OutOfRange.Side.UNDER, Basis.UNSTATED);
    return new StatusOnly((bits & 1) == 0 ? Stability.STABLE : Stability.UNSTABLE);
  }

  private record Mode8213(String name, String legend, boolean namesUnit) implements WireLayout {
    private static final int DIGITS = 6;

    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      return text(said).map(text -> (STX + text + "\r").getBytes(StandardCharsets.US_ASCII));
    }

    private Optional<String> text(Decoded said) {
      if (said instanceof Weighed weighed) return weighed(weighed);
      if (said instanceof StatusOnly only && only.basis() == Basis.UNSTATED)
        return switch (only.stability()) {
          case STABLE -> status(0);
          case UNSTABLE -> status(1);
          case UNSTATED -> Optional.empty();
        };
      if (said instanceof OutOfRange out && out.basis() == Basis.UNSTATED)
        return status(out.side() == OutOfRange.Side.OVER ? 2 : 4);
      if (said instanceof Decoded.InstrumentFault fault && fault.basis() == Basis.UNSTATED)
        return status(8).filter(fault.code()::equals);
      return Optional.empty();
    }

    private Optional<String> weighed(Weighed said) {
      Indication number = said.indication();
      boolean canSay = said.stability() == Stability.UNSTATED
          && said.basis() == (legend.isEmpty() ? Basis.UNSTATED : Basis.NET)
          && number.unit().isPresent() == namesUnit;
      if (!canSay) return Optional.empty();
      String sign = Fields.isNegative(number) ? "-" : "";
      return Fields.zeroFilled(number, DIGITS)
          .map(digits -> sign + digits + Fields.unit(number) + legend);
    }

    private static Optional<String> status(int bit) {
      return Optional.of("?" + (char) (0x60 | bit));
    }
  }
}
