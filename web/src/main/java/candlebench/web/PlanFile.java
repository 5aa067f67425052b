package candlebench.web;

import candlebench.station.batch.planning.PlanOrder;
import candlebench.station.batch.planning.RecipeJson;
import candlebench.station.batch.planning.UnreadablePlan;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A plan file on this computer. */
final class PlanFile {
  /** A longer file is no plan. */
  private static final int MOST_BYTES = 1 << 20;

  /** Some editors put it at the start of a file in UTF-8. */
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private PlanFile() {}

  /** @throws WrongUse where there is none or it cannot be read as one, naming the field and the fix */
  static PlanOrder read(Path file) throws WrongUse {
    try {
      return RecipeJson.read(text(file));
    } catch (UnreadablePlan wrong) {
      throw new WrongUse("'" + file + "': " + wrong.getMessage());
    }
  }

  private static String text(Path file) throws WrongUse {
    if (Files.isDirectory(file)) throw new WrongUse("'" + file + "' is a folder: name a plan file");
    if (!Files.exists(file)) throw new WrongUse("no file '" + file + "': name a plan file");
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES)
        throw new WrongUse("'" + file + "' is over 1 MB, which is no plan file");
      String text =
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    } catch (CharacterCodingException foreign) {
      throw new WrongUse("'" + file + "' is not in UTF-8: save it as UTF-8");
    } catch (IOException unreadable) {
      throw new WrongUse("cannot read '" + file + "': " + unreadable.getMessage());
    }
  }
}
