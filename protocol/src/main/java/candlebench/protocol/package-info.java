/**
 * What scales say: framers, decoders, encoders, and the list of formats. Pure: bytes in, values out.
 *
 * <p>Names of scale makers appear only as names of their published protocols, for interoperability.
 */
package candlebench.protocol;
