package candlebench.station.journal;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/**
 * How entries hang together: each carries the hash of the one before, so that none can be changed, left out or moved unseen.
 *
 * <p>The hash is SHA-256 (FIPS 180-4) over, in this order: the purpose's word, the sequence number, the wall time, the kind, the
 * body and the hash before. A number is eight bytes, most significant first; each text is its length in UTF-8 bytes as four bytes,
 * most significant first, and then those bytes, so that no byte can move from one field to the next unseen. The hash before the
 * first entry is sixty-four zeros. What has no key cannot show a cut tail or a record written anew: for that, compare with a head
 * noted elsewhere.
 */
public final class Chain {

  /** The head of an empty journal. */
  public static final String START = "0".repeat(64);

  private final byte[] purpose;

  public Chain(Purpose purpose) {
    this.purpose = purpose.word().getBytes(StandardCharsets.UTF_8);
  }

  /** The entry that follows the one with the given number and hash. */
  JournalEntry next(long lastSequence, String lastHash, String wall, EntryText text) {
    long sequence = lastSequence + 1;
    String hash = hash(sequence, wall, text.kind(), text.body(), lastHash);
    return new JournalEntry(sequence, wall, text.kind(), text.body(), lastHash, hash);
  }

  /** The hash an entry should carry, were it written at the given place. */
  String hashAt(long sequence, JournalEntry entry) {
    return hash(sequence, entry.wall(), entry.kind(), entry.body(), entry.previous());
  }

  /** What speaks against an entry being the one after the one with the given number and hash, if anything. */
  Optional<String> fault(long lastSequence, String lastHash, JournalEntry entry) {
    if (entry.sequence() != lastSequence + 1)
      return Optional.of("entry " + (lastSequence + 1) + " is missing; entry " + entry.sequence()
          + " stands in its place");
    if (!hashAt(entry.sequence(), entry).equals(entry.hash()))
      return Optional.of("entry " + entry.sequence() + " was changed after it was written");
    if (!entry.previous().equals(lastHash))
      return Optional.of("entry " + entry.sequence() + " was not written after the entry "
          + lastSequence + " that stands before it: one of the two was put there later");
    return Optional.empty();
  }

  private String hash(long sequence, String wall, String kind, String body, String previous) {
    MessageDigest digest = sha256();
    text(digest, purpose);
    digest.update(ByteBuffer.allocate(8).putLong(sequence).flip());
    text(digest, wall.getBytes(StandardCharsets.UTF_8));
    text(digest, kind.getBytes(StandardCharsets.UTF_8));
    text(digest, body.getBytes(StandardCharsets.UTF_8));
    text(digest, previous.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(digest.digest());
  }

  private static void text(MessageDigest digest, byte[] bytes) {
    digest.update(ByteBuffer.allocate(4).putInt(bytes.length).flip());
    digest.update(bytes);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException impossible) {
      throw new AssertionError("every Java platform has SHA-256", impossible);
    }
  }
}
