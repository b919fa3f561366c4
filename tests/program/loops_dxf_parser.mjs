// Every polyline and circle of a DXF file as the npm package dxf-parser sees it, as JSON.
import { readFileSync } from "node:fs";
import DxfParser from "dxf-parser";

const file = readFileSync(process.argv[2], "utf8");
const loops = [];
for (const e of new DxfParser().parseSync(file).entities) {
  if (e.type === "CIRCLE") loops.push({ layer: e.layer, closed: true, radius: e.radius });
  if (e.type === "POLYLINE" || e.type === "LWPOLYLINE") loops.push({ layer: e.layer, closed: e.shape === true, vertices: e.vertices });
}
console.log(JSON.stringify(loops));
