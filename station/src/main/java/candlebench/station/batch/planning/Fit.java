package candlebench.station.batch.planning;

import java.util.List;

/** How well a charge fits its pot and its scales, the best first. */
enum Fit {
  /** Nothing is refused, and there is room to cure an over-pour. */
  WELL,
  /** Nothing is refused. */
  BARELY,
  /** There is room, for a cure too, but something else is refused. */
  ROOM_FOR_CURE,
  ROOM,
  NONE;

  boolean of(PlannedCharge charge) {
    boolean room = charge.hasRoom();
    boolean cure = charge.hasRoomForCure();
    return switch (this) {
      case WELL -> cure && !charge.isRefused();
      case BARELY -> !charge.isRefused();
      case ROOM_FOR_CURE -> cure;
      case ROOM -> room;
      case NONE -> true;
    };
  }

  /** How well the worst of them fits. */
  static Fit of(List<PlannedCharge> charges) {
    for (Fit fit : values()) if (charges.stream().allMatch(fit::of)) return fit;
    throw new AssertionError(charges);
  }
}
