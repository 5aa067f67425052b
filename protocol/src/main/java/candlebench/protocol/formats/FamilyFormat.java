package candlebench.protocol.formats;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Refused;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.Refusal;
import candlebench.protocol.Refusal.Reason;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Several formats read as one, for a scale whose layout is not known: each frame is read by whichever understands it. What two of them
 * read differently is refused, since nothing in the bytes says which is right.
 *
 * @param members the formats, the most usual first
 */
record FamilyFormat(
    String id, String title, List<ScaleFormat> members, Supplier<Framer> framer, Commands commands)
    implements ScaleFormat {

  @Override
  public String source() {
    return "the documents of "
        + String.join(", ", members.stream().map(ScaleFormat::id).toList());
  }

  @Override
  public List<LineSettings> lines() {
    return members.stream()
        .flatMap(member -> member.lines().stream())
        .distinct()
        .toList();
  }

  @Override
  public Framer newFramer() {
    return framer.get();
  }

  @Override
  public Decoded decode(Frame frame) {
    Optional<Decoded> understood = Optional.empty();
    Optional<Refused> refused = Optional.empty();
    ScaleFormat reader = members.get(0);
    for (ScaleFormat member : members) {
      Decoded said = member.decode(frame);
      if (said instanceof Refused refusal) {
        if (refused.isEmpty() || saysMore(refusal.refusal(), refused.get().refusal()))
          refused = Optional.of(refusal);
      } else if (understood.isEmpty()) {
        understood = Optional.of(said);
        reader = member;
      } else if (!understood.get().equals(said)) {
        return ambiguous(reader, member);
      }
    }
    return understood.isPresent() ? understood.get() : refused.orElseThrow();
  }

  /** A wrong checksum says that the layout was right; a wrong length says least; else who came further in reading knows better. */
  private static boolean saysMore(Refusal one, Refusal other) {
    int rank = rank(one.reason()) - rank(other.reason());
    return rank == 0 ? one.offset() > other.offset() : rank > 0;
  }

  private static int rank(Reason reason) {
    return switch (reason) {
      case WRONG_CHECKSUM -> 2;
      case NOT_A_NUMBER, UNKNOWN_UNIT, UNKNOWN_HEADER, NOT_THIS_FORMAT, TOO_LONG, CUT_SHORT -> 1;
      case WRONG_LENGTH -> 0;
    };
  }

  private static Decoded ambiguous(ScaleFormat one, ScaleFormat other) {
    return new Refused(new Refusal(
        Reason.NOT_THIS_FORMAT,
        0,
        one.id() + " and " + other.id()
            + " read this frame differently: name the one that the scale is set to"));
  }

  @Override
  public List<WireLayout> layouts() {
    return members.stream()
        .flatMap(member -> member.layouts().stream()
            .map(layout -> (WireLayout) new Told(this, name(member, layout), layout)))
        .toList();
  }

  private static String name(ScaleFormat member, WireLayout layout) {
    return member.id().substring(member.id().indexOf('/') + 1) + "-" + layout.name();
  }

  @Override
  public Optional<byte[]> command(ScaleCommand command) {
    return commands.bytes(command);
  }

  @Override
  public boolean unitMayBeBorrowed() {
    return members.stream().anyMatch(ScaleFormat::unitMayBeBorrowed);
  }

  @Override
  public boolean unitIsASetting() {
    return members.stream().allMatch(ScaleFormat::unitIsASetting);
  }

  /** A layout of a member, as far as its frames can be told from those of the others. */
  private record Told(FamilyFormat family, String name, WireLayout layout) implements WireLayout {
    @Override
    public Optional<byte[]> encode(Decoded said, Shown shown) {
      return layout
          .encode(said, shown)
          .filter(bytes -> family.decode(new Frame(0, bytes, Framer.NEVER)).equals(said));
    }
  }
}
