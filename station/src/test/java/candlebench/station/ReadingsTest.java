package candlebench.station;

import static org.assertj.core.api.Assertions.assertThat;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.NotALoad.Matter;
import candlebench.protocol.Decoded.OutOfRange.Side;
import candlebench.protocol.Frame;
import candlebench.protocol.Framer;
import candlebench.protocol.LineSettings;
import candlebench.protocol.Refusal;
import candlebench.protocol.ScaleCommand;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.shared.Stability;
import candlebench.shared.Stamp;
import candlebench.station.guidance.GuidanceInput;
import candlebench.station.guidance.GuidanceInput.NoWeightShown;
import candlebench.station.guidance.GuidanceInput.NoWeightShown.Why;
import candlebench.station.guidance.GuidanceInput.ReadingArrived;
import candlebench.station.link.Line;
import candlebench.station.link.LinkReport;
import candlebench.station.link.LinkState;
import candlebench.station.link.ScaleSettings;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ReadingsTest {
  private static final Stamp AT = new Stamp(Instant.parse("2026-11-25T08:00:00Z"), 7);
  private static final Frame FRAME = new Frame(0, new byte[] {'x'}, AT);
  private static final Line NOWHERE = () -> new Line.NotOpened(LinkReport.of(LinkState.LOST));

  @Test
  void a_weight_keeps_all_that_the_scale_said() {
    Readings readings = readings(false, false, Optional.empty());
    Indication shown = Indication.of("12.50", MassUnit.OUNCE);
    assertThat(readings.of(FRAME, new Decoded.Weighed(shown, Basis.NET, Stability.UNSTABLE)))
        .contains(new ReadingArrived(
            2,
            new Reading(
                shown,
                Mass.of("12.50", MassUnit.OUNCE),
                Basis.NET,
                Stability.UNSTABLE,
                false,
                AT)));
  }

  @Test
  void a_unit_left_out_while_moving_is_the_last_one_named_and_only_assumed() {
    Readings readings = readings(true, false, Optional.of(MassUnit.GRAM));
    assertThat(reading(readings, named("1.5", MassUnit.OUNCE)).unitAssumed()).isFalse();
    Reading moving = reading(readings, unnamed("2.0"));
    assertThat(moving.unitAssumed()).isTrue();
    assertThat(moving.mass()).isEqualTo(Mass.of("2.0", MassUnit.OUNCE));
    assertThat(moving.indication().unit()).isEmpty();
  }

  @Test
  void a_unit_key_pressed_in_between_is_heeded() {
    Readings readings = readings(true, false, Optional.empty());
    reading(readings, named("1.5", MassUnit.GRAM));
    reading(readings, named("0.053", MassUnit.OUNCE));
    assertThat(reading(readings, unnamed("0.060")).mass())
        .isEqualTo(Mass.of("0.060", MassUnit.OUNCE));
  }

  @Test
  void a_scale_that_never_names_its_unit_has_that_of_its_settings_which_the_maker_stated() {
    Readings readings = readings(false, true, Optional.of(MassUnit.KILOGRAM));
    Reading reading = reading(readings, unnamed("1.25"));
    assertThat(reading.mass()).isEqualTo(Mass.ofGrams("1250"));
    assertThat(reading.unitAssumed()).isFalse();
  }

  @Test
  void without_a_unit_from_anywhere_there_is_no_weight() {
    assertThat(readings(true, false, Optional.empty()).of(FRAME, unnamed("1.0")))
        .contains(none(Why.NO_UNIT));
    assertThat(readings(false, true, Optional.empty()).of(FRAME, unnamed("1.0")))
        .contains(none(Why.NO_UNIT));
  }

  @Test
  void a_scale_that_names_its_unit_and_then_does_not_is_not_believed_by_its_settings() {
    Readings readings = readings(false, false, Optional.of(MassUnit.GRAM));
    reading(readings, named("1.5", MassUnit.OUNCE));
    assertThat(readings.of(FRAME, unnamed("1.5"))).contains(none(Why.NO_UNIT));
  }

  @Test
  void what_is_no_weight_is_never_made_a_number() {
    Readings readings = readings(false, false, Optional.of(MassUnit.GRAM));
    assertThat(readings.of(FRAME, new Decoded.OutOfRange(Side.OVER, Basis.GROSS)))
        .contains(none(Why.OVERLOAD));
    assertThat(readings.of(FRAME, new Decoded.OutOfRange(Side.UNDER, Basis.GROSS)))
        .contains(none(Why.UNDERLOAD));
    assertThat(readings.of(FRAME, new Decoded.InstrumentFault("E1"))).contains(none(Why.FAULT));
    assertThat(readings.of(FRAME, new Decoded.StatusOnly(Stability.UNSTABLE)))
        .contains(none(Why.BLANK));
    for (Matter matter : Matter.values()) {
      Optional<GuidanceInput> input = readings.of(FRAME, new Decoded.NotALoad(matter, "12 pcs"));
      Optional<GuidanceInput> expected = switch (matter) {
        case PIECES, PERCENT, FORCE, DENSITY, OTHER_UNIT -> Optional.of(none(Why.NO_UNIT));
        case BLANK -> Optional.of(none(Why.BLANK));
        case TOTAL, REMARK -> Optional.empty();
      };
      assertThat(input).as(matter.name()).isEqualTo(expected);
    }
  }

  @Test
  void what_says_nothing_about_the_pan_changes_nothing() {
    Readings readings = readings(false, false, Optional.of(MassUnit.GRAM));
    assertThat(readings.of(
            FRAME, new Decoded.TareStated(Indication.of("5", MassUnit.GRAM), Stability.STABLE)))
        .isEmpty();
    assertThat(readings.of(FRAME, new Decoded.Acknowledged("OK"))).isEmpty();
    assertThat(readings.of(
            FRAME, new Decoded.Refused(new Refusal(Refusal.Reason.CUT_SHORT, 0, "cut"))))
        .isEmpty();
  }

  @Test
  void a_number_beyond_all_scales_is_a_fault_of_the_instrument() {
    Readings readings = readings(false, false, Optional.empty());
    assertThat(readings.of(FRAME, named("99999999", MassUnit.KILOGRAM))).contains(none(Why.FAULT));
  }

  private static Reading reading(Readings readings, Decoded decoded) {
    return ((ReadingArrived) readings.of(FRAME, decoded).orElseThrow()).reading();
  }

  private static GuidanceInput none(Why why) {
    return new NoWeightShown(2, why, AT);
  }

  private static Decoded named(String number, MassUnit unit) {
    return new Decoded.Weighed(Indication.of(number, unit), Basis.UNSTATED, Stability.STABLE);
  }

  private static Decoded unnamed(String number) {
    return new Decoded.Weighed(Indication.withoutUnit(number), Basis.UNSTATED, Stability.UNSTABLE);
  }

  private static Readings readings(boolean borrows, boolean neverNames, Optional<MassUnit> unit) {
    return new Readings(
        2,
        new ScaleSettings(
            NOWHERE,
            new Format(borrows, neverNames),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            unit,
            Optional.empty()));
  }

  /** A format of which only matters what it says about units. */
  private record Format(boolean unitMayBeBorrowed, boolean unitIsASetting) implements ScaleFormat {
    @Override
    public String id() {
      return "test";
    }

    @Override
    public String title() {
      return "test";
    }

    @Override
    public String source() {
      return "none, made up for this test";
    }

    @Override
    public List<LineSettings> lines() {
      return List.of(LineSettings.of("9600-8N1"));
    }

    @Override
    public Framer newFramer() {
      throw new AssertionError("nothing is framed here");
    }

    @Override
    public Decoded decode(Frame frame) {
      throw new AssertionError("nothing is decoded here");
    }

    @Override
    public List<WireLayout> layouts() {
      return List.of();
    }

    @Override
    public Optional<byte[]> command(ScaleCommand command) {
      return Optional.empty();
    }
  }
}
