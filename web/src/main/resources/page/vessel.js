// The picture: a pot or a glass that fills to its line, and the stream as it should be now.

const SVG = "http://www.w3.org/2000/svg";
const LINE_Y = 200;      // where 1000 per mille stands
const FLOOR_Y = 478;     // the inner bottom
const MOUTH_Y = 112;     // the rim
const LABEL_LETTERS = 9;   // what fits beside the vessel at its full width
const LABEL_WIDTH = 138;
const GLASS = "M78 112 L92 470 Q94 486 110 486 L290 486 Q306 486 308 470 L322 112 Z";
const POT = "M86 112 C74 112 62 104 50 94 C52 122 64 150 86 164 L86 462 Q86 486 110 486 L296 486 Q320 486 320 462 L320 112 Z";
const HANDLE = "M320 236 Q388 236 388 310 Q388 384 320 384";

export function makeVessel(svg) {
  const part = (name, kind, attributes = {}) => {
    const element = document.createElementNS(SVG, name);
    element.setAttribute("class", kind);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    return element;
  };
  const defs = part("defs", "");
  const inside = part("clipPath", "", { id: "inside" });
  const insideShape = part("path", "");
  inside.append(insideShape);
  const hatch = part("pattern", "", { id: "hatch", width: 18, height: 18, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" });
  hatch.append(part("rect", "v-over", { width: 9, height: 18 }));
  const doubt = part("pattern", "", { id: "doubt", width: 26, height: 26, patternUnits: "userSpaceOnUse" });
  doubt.append(part("circle", "v-doubt", { cx: 13, cy: 13, r: 4 }));
  defs.append(inside, hatch, doubt);

  const plate = part("path", "v-plate", { d: "M40 500 h320 v10 h-320 z" });
  const body = part("path", "v-glass");
  const handle = part("path", "v-part", { d: HANDLE });
  const filling = part("g", "", { "clip-path": "url(#inside)" });
  const wax = part("g", "v-wax");
  const waxBody = part("rect", "v-wax-body", { x: 0, y: 0, width: 400, height: 600 });
  const waxTop = part("path", "v-top", { d: "M0 2 H400" });
  wax.append(waxBody, waxTop);
  const surplus = part("rect", "", { x: 0, width: 400, fill: "url(#hatch)" });
  filling.append(wax, surplus);
  const outline = part("path", "v-part");
  const line = part("path", "v-line", { d: `M-66 ${LINE_Y} H396` });
  const marks = part("path", "v-mark", { d: `M408 ${LINE_Y - 18} l-30 18 l30 18 z` });
  const label = part("text", "v-label", { x: -66, y: LINE_Y - 14, lengthAdjust: "spacingAndGlyphs" });
  const stream = part("path", "v-stream");
  const lid = part("path", "v-stop", { d: "M60 66 h280 v24 h-280 z M186 4 h28 l20 20 v28 l-20 20 h-28 l-20 -20 v-28 z" });
  const arrow = part("path", "v-arrow");
  const flame = part("g", "");
  flame.append(
    part("path", "v-part", { d: "M200 200 V164" }),
    part("path", "v-flame", { d: "M200 60 C226 104 238 124 232 146 A33 33 0 0 1 168 146 C162 124 180 106 200 60 Z" }),
    part("path", "v-flame-in", { d: "M200 112 C212 132 216 142 213 152 A14 14 0 0 1 187 152 C184 142 190 134 200 112 Z" }));
  svg.append(defs, plate, body, handle, stream, filling, outline, line, marks, label, lid, arrow, flame);

  const show = (element, visible) => element.setAttribute("visibility", visible ? "visible" : "hidden");

  return {
    /**
     * Draws a scene. The level is per mille of the line, or null where nothing is filled; it is drawn in dots where it is only
     * remembered. The place is "down" or "up" for what to do with the vessel, "lit" for a candle at rest, or "".
     */
    draw({ shape, permille, remembered, cue, target, place }) {
      waxBody.setAttribute("fill", remembered ? "url(#doubt)" : "inherit");
      waxTop.classList.toggle("v-ghost", remembered);
      const isPot = shape === "pot";
      const d = isPot ? POT : GLASS;
      for (const each of [body, insideShape, outline]) each.setAttribute("d", d);
      show(handle, isPot);
      const ghost = place === "down" || place === "up";
      body.classList.toggle("v-ghost", ghost);
      outline.classList.toggle("v-ghost", ghost);
      const lit = place === "lit";
      const level = lit ? 1000 : permille ?? 0;
      const surface = Math.max(MOUTH_Y + 4, FLOOR_Y + 8 - (level / 1000) * (FLOOR_Y + 8 - LINE_Y));
      wax.setAttribute("transform", `translate(0 ${level > 0 ? surface.toFixed(1) : 600})`);
      const over = !lit && level > 1000 && cue === "over";
      show(surplus, over);
      surplus.setAttribute("y", surface.toFixed(1));
      surplus.setAttribute("height", Math.max(0, LINE_Y - surface).toFixed(1));
      const weighing = permille !== null && !lit;
      for (const each of [line, marks, label]) show(each, weighing);
      label.textContent = target;
      if (target.length > LABEL_LETTERS) label.setAttribute("textLength", LABEL_WIDTH);
      else label.removeAttribute("textLength");
      const widths = { pour: 30, slow: 9 };
      const width = weighing ? widths[cue] : undefined;
      show(stream, width !== undefined || (weighing && cue === "drops"));
      if (width) stream.setAttribute("d", `M${200 - width / 2} 0 h${width} V${surface.toFixed(0)} h${-width} Z`);
      if (cue === "drops") stream.setAttribute("d", [16, 74, 132].map(drop).join(""));
      show(lid, weighing && (cue === "stop" || cue === "over"));
      show(arrow, ghost);
      arrow.setAttribute("d", place === "up" ? "M170 420 V300 h-46 L200 216 L276 300 h-46 V420 Z" : "M170 216 V340 h-46 L200 424 L276 340 h-46 V216 Z");
      show(flame, lit);
    },
  };
}

function drop(y) {
  return `M200 ${y} c10 16 15 22 15 30 a15 15 0 0 1 -30 0 c0 -8 5 -14 15 -30 Z`;
}
