/**
 * One class per wire format, named after its published protocol, and the one list of them: {@code ScaleFormats}.
 *
 * <p>A class {@code …Format} reads; where a format has several layouts, {@code …Layouts} writes them. A family of formats of fixed fields is
 * listed in {@code …Formats}, and its lines are drawn in {@code …Tables}: a {@code LineTable} is a list of fields, and both reads and
 * writes. All are held to the same tables of frames, {@code src/test/resources/frames/<id>.tsv}.
 *
 * <p>What no decoder can see: most of these lines carry no checksum, so a digit turned into another digit on the way is read as another
 * weight. Where a layout has fixed widths, a byte that was lost or added is refused. One wrong line is never enough for a weight to be
 * accepted: it must stay so.
 */
package candlebench.protocol.formats;
