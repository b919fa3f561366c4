// dxf-parser (npm): loops and areas from its raw vertices and bulges.
import fs from "node:fs";
import path from "node:path";
import parserModule from "dxf-parser";

const DxfParser = parserModule.default ?? parserModule;
const folder = process.argv[2];
const expected = JSON.parse(fs.readFileSync(path.join(folder, "expected.json"), "utf8"));
let failures = 0;
const check = (ok, what) => {
  if (ok) return;
  failures += 1;
  console.log("FAIL", what);
};

// Shoelace plus, for each bulge tan(a / 4), the circular segment r^2 (a - sin a) / 2.
function loopArea(vertices) {
  let total = 0;
  vertices.forEach((v, i) => {
    const w = vertices[(i + 1) % vertices.length];
    total += (v.x * w.y - w.x * v.y) / 2;
    if (!v.bulge) return;
    const angle = 4 * Math.atan(v.bulge);
    const radius = (Math.hypot(w.x - v.x, w.y - v.y) * (1 + v.bulge * v.bulge)) / (4 * v.bulge);
    total += (radius * radius * (angle - Math.sin(angle))) / 2;
  });
  return total;
}

const read = (file) => new DxfParser().parseSync(fs.readFileSync(path.join(folder, file), "latin1"));

for (const want of expected.cut) {
  const dxf = read(want.file);
  check(dxf.header.$ACADVER === "AC1009", `${want.file}: version ${dxf.header.$ACADVER}`);
  let area = 0;
  let loops = 0;
  for (const e of dxf.entities) {
    if (e.layer !== "INNER_CUT" && e.layer !== "OUTER_CUT") continue;
    loops += 1;
    let size = 0;
    if (e.type === "CIRCLE") {
      size = Math.PI * e.radius * e.radius;
    } else {
      check(e.type === "POLYLINE" && e.shape === true, `${want.file}: ${e.type} on ${e.layer} is not closed`);
      size = Math.abs(loopArea(e.vertices));
    }
    area += e.layer === "OUTER_CUT" ? size : -size;
  }
  check(loops === want.loops, `${want.file}: ${loops} loops, expected ${want.loops}`);
  check(Math.abs(area - want.area) <= 1e-6 * want.area, `${want.file}: area ${area}, expected ${want.area}`);
}
for (const want of expected.drill) {
  const holes = want.files.flatMap((file) => read(file).entities.filter((e) => e.layer === "HOLES")).length;
  check(holes === want.holes, `${want.files}: ${holes} holes, expected ${want.holes}`);
}
const files = expected.cut.length + expected.drill.length;
console.log(`${files} files, ${failures} failures`);
process.exit(failures > 0 || files === 0 ? 1 : 0);
