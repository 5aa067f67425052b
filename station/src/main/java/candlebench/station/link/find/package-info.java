/**
 * The search for a scale of which nothing is known but the port it is plugged into: {@link candlebench.station.link.find.Sweep} decides,
 * {@link candlebench.station.link.find.ScaleFinder} does it on a real port.
 */
package candlebench.station.link.find;
