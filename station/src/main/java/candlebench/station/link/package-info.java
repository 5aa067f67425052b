/**
 * The wires. {@code ScaleLink} reads one scale in a thread of its own, through a {@code BytePort} that is serial or TCP, and opens it again
 * when it is gone. What it decides by time ({@code Asking}, {@code FrameStart}, {@code LineWatch}) is pure. Knows no guidance.
 */
package candlebench.station.link;
