/**
 * The vocabulary of the bench: values only, and nothing but the JDK's own values.
 *
 * <p>The trade's terms, each in a sentence:
 *
 * <ul>
 *   <li><b>Gross</b>: all that stands on the pan. <b>Tare</b>: the empty weight to be left out. <b>Net</b>: gross less tare (OIML R 76-1, T.5).
 *   <li><b>Division</b> <i>d</i>: the step in which the scale counts (OIML R 76-1, T.3.2). <b>Indication</b>: the number it shows.
 *   <li><b>Zero</b>: the indication of an empty pan. <b>Overload, underload</b>: more, or less, than the scale can weigh.
 *   <li><b>Stable</b>: what the scale calls at rest. <b>Settled</b>: what the station itself found at rest.
 *   <li><b>Target</b>: the net weight wanted. <b>Tolerance</b>: the allowance under and over it. <b>Verdict</b>: where a weight lies.
 *   <li><b>Batch</b>: what is made in one go from a recipe. <b>Charge</b>: one pot's worth of it. <b>Part</b>: wax, oil, dye, and so on
 *       (common practice, no source).
 *   <li><b>Pot</b>: what a charge is melted and mixed in, the trade's pouring pitcher. <b>Vessel</b>: what a candle is poured into.
 *   <li><b>Fill weight</b>: what a vessel holds to its line. <b>Load</b>: the share of oil, always said of wax or of total.
 *   <li><b>Lot</b>: one delivery of a material, as its supplier numbered it.
 * </ul>
 */
package candlebench.shared;
