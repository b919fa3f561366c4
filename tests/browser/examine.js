// Loads the page's module as a page does, puts every case to it, and things that are no
// case in between: each must be answered with a message and leave the module as it was.
//   node examine.js FOLDER CASES RESULTS
"use strict";
const fs = require("fs");
const path = require("path");

const [folder, casesFile, resultsFile] = process.argv.slice(2);

// No order, however it is put. The last are UTF-16 that is no text, a file that nests
// beyond what a document may, and a bracket deeper than any stack.
function nonsense(files) {
  const [name] = Object.keys(files);
  const deep = 100000;
  let nested = '{"at": [1, 1]}';
  for (let i = 0; i < 2000; ++i) nested = `{"at": [1, 1], "list": [${nested}]}`;
  return [
    "",
    "no JSON",
    "[]",
    "null",
    '{"files": {}, "order": "a"}',
    '{"files": {}, "order": 1, "sets": []}',
    '{"files": {}, "order": "a", "sets": [1]}',
    '{"files": {}, "order": "a", "sets": [], "more": 1}',
    '{"files": {"a": 1}, "order": "a", "sets": []}',
    JSON.stringify({ files: { other: files[name] }, order: "other", sets: [] }),
    '"\ud800',
    `{"files": {"a": {"file": "a", "root": ${nested}}}, "order": "a", "sets": []}`,
    "[".repeat(deep) + "]".repeat(deep),
  ];
}

async function main() {
  const make = require(path.resolve(folder, "bedwright.js"));
  const module = await make({ wasmBinary: fs.readFileSync(path.join(folder, "bedwright.wasm")) });
  const { files, cases } = JSON.parse(fs.readFileSync(casesFile, "utf8"));
  const refused = nonsense(files);
  const results = [];
  let milliseconds = 0;
  cases.forEach((one, i) => {
    const wrong = refused[i % refused.length];
    const answer = JSON.parse(module.examine(wrong));
    if (typeof answer.error !== "string" || Object.keys(answer).length !== 1)
      throw new Error(`${wrong.slice(0, 100)} is answered with ${JSON.stringify(answer).slice(0, 300)}`);
    const asked = JSON.stringify({ files, order: one.order, sets: one.sets });
    const start = performance.now();
    const text = module.examine(asked);
    milliseconds += performance.now() - start;
    results.push(JSON.parse(text));
  });
  if (cases.length < refused.length) throw new Error("too few cases to put all that is none");
  fs.writeFileSync(resultsFile, JSON.stringify(results));
  console.log(`${cases.length} orders in node, ${(milliseconds / cases.length).toFixed(1)} ms each`);
}

main().catch((error) => {
  console.error(error);
  process.exitCode = 1;
});
