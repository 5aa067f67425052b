/** What a page may show, made from guidance's state: pure, and the only place where a mass becomes text for a maker. */
package candlebench.station.view;
