/**
 * The bench that does not exist: scale physics, line faults and a maker's hands, to try the station on.
 *
 * <p>It knows what scales say ({@code protocol}) and nothing of the station, so that it cannot share the station's mistakes.
 *
 * <pre>{@code
 * Pan pan = new Pan();
 * VirtualScale scale = new VirtualScale(ScaleTraits.benchThreeKilograms(), ScaleQuirks.none(), format, layout, pan, seed);
 * VirtualMaker maker = VirtualMaker.drawn(Slips.none(), seed);
 * for (long nanos = TICK; nanos <= end; nanos += TICK) {                  // ticks of 20 ms or less
 *   scale.advanceTo(nanos, sink);                                         // frames, in order, with the moment of each
 *   maker.advanceTo(nanos, perceived(nanos), pan);                        // what the station under test says now
 * }
 * }</pre>
 *
 * <p>Everything runs in injected time and from seeds: the same seed and the same calls give the same bytes. Only {@link
 * candlebench.simulator.RunningBench} reads a real clock. A step of a run goes: the {@link candlebench.simulator.VirtualScale}
 * advances to a moment and hands on the bytes it sent, then the hands and the surroundings act on the {@link
 * candlebench.simulator.Pan} at that moment. What truly stands on the pan is known exactly, which no real bench can say.
 */
package candlebench.simulator;
