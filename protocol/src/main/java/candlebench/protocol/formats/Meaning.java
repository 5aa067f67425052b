package candlebench.protocol.formats;

import candlebench.protocol.Decoded;

/** What a number with its unit says, once both are read. */
interface Meaning {
  Decoded of(String number, WireUnit unit);
}
