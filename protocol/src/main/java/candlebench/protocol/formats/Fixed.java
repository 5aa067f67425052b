package candlebench.protocol.formats;

/** Text that is the same in every line. */
record Fixed(String text) implements Field {

  @Override
  public int width() {
    return text.length();
  }

  @Override
  public void take(LineText line, Draft draft) {
    if (!line.take(text))
      draft.stop(
          line.notThisFormat("a mark of the layout is missing here: bytes were lost or hit"));
  }

  @Override
  public boolean write(Statement statement, StringBuilder line) {
    line.append(text);
    return true;
  }
}
