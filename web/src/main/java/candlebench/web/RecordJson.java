package candlebench.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;

/** What the pages of the record ask for, as JSON: every component of a row under its own name. */
final class RecordJson {
  private static final JsonMapper JSON = new JsonMapper();

  private RecordJson() {}

  static byte[] bytes(Object rows) {
    try {
      return JSON.writeValueAsBytes(rows);
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("rows that cannot be written down: " + rows, impossible);
    }
  }
}
