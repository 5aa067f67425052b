package candlebench.protocol.formats;

/** The address of an indicator on a shared line, a letter from A on. */
record AddressLetter() implements Field {
  private static final int LETTERS = 26;

  @Override
  public int width() {
    return 1;
  }

  @Override
  public void take(LineText line, Draft draft) {
    char letter = line.next();
    if (letter < 'A' || letter > 'Z') draft.stop(line.unknownHeader());
    else line.moveTo(line.place() + 1);
  }

  @Override
  public boolean write(Statement statement, StringBuilder text) {
    text.append((char) ('A' + Math.floorMod(statement.scale().address(), LETTERS)));
    return true;
  }
}
