package candlebench.protocol.formats;

/** What a mark in a line can say. */
enum Say {
  STABLE(Topic.STABILITY),
  UNSTABLE(Topic.STABILITY),
  OVER(Topic.RANGE),
  UNDER(Topic.RANGE),
  /** Out of range; the sign tells which way. */
  OUT(Topic.RANGE),
  FAULT(Topic.FAULT),
  GROSS(Topic.BASIS),
  NET(Topic.BASIS),
  TARE(Topic.TARE),
  PLUS(Topic.SIGN),
  MINUS(Topic.SIGN),
  /** Something that is not about the weight. */
  NOTHING(Topic.SIGN);

  /** What a line can speak of. What no field of a line speaks of, the line cannot say. */
  enum Topic {
    SIGN,
    UNIT,
    STABILITY,
    BASIS,
    TARE,
    RANGE,
    FAULT
  }

  private final Topic topic;

  Say(Topic topic) {
    this.topic = topic;
  }

  Topic topic() {
    return topic;
  }
}
