package candlebench.web;

/** Where a bench keeps its data unless a command is told otherwise: where the environment says, else in the user's home. */
final class DataFolder {

  /** As picocli reads it. */
  static final String UNLESS_SAID =
      "${env:" + Settings.PREFIX + "DATA:-${sys:user.home}/candlebench}";

  private DataFolder() {}
}
