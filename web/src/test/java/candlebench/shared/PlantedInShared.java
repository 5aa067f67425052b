package candlebench.shared;

/** Breaks the rules on purpose, so that the test of the architecture is seen to fail. */
final class PlantedInShared {
  candlebench.protocol.Frame frame;
  java.io.File file;
  Thread thread;
}
