// Makes the stripped standard library and the memory image of a Python that has the package
// imported. Usage: node make_snapshot.mjs plan.json
// plan: { pyodide, dataEnd, wheel, sourceWheel, lock, named, keep, prepare, resident,
//   imageStdlib, stdlibOut, imageOut, packageOut }
import crypto from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { clearFree, headSize, packImage } from "./pack_image.mjs";

const plan = JSON.parse(fs.readFileSync(process.argv[2], "utf8"));
seeOneWorld();
const { loadPyodide } = await import(pathToFileURL(path.join(plan.pyodide, "pyodide.mjs")).href);
const prepare = plan.prepare.map((file) => fs.readFileSync(file, "utf8"));
const resident = fs.readFileSync(plan.resident, "utf8");
// Column positions for tracebacks nobody will read are a tenth of the byte code.
const env = { PYTHONHASHSEED: "0", PYTHONNODEBUGRANGES: "1", LANG: "C.UTF-8" };

/**
 * Whatever Python reads of the builder's machine ends up in the image: clock, chance, time zone
 * and the path of this script. All are fixed, so that the same sources give the same image.
 * The page seeds Python's chance anew when it restores the image (resident.py).
 */
function seeOneWorld() {
  const then = Date.UTC(2020, 0, 1);
  const NativeDate = Date;
  globalThis.Date = class extends NativeDate {
    constructor(...given) {
      super(...(given.length ? given : [then]));
    }
    static now() {
      return then;
    }
  };
  performance.now = () => 0;
  let state = 1;
  const chance = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0);
  const fill = (view) => {
    const bytes = new Uint8Array(view.buffer ?? view, view.byteOffset ?? 0, view.byteLength);
    bytes.forEach((_, i) => { bytes[i] = chance() >>> 24; });
    return view;
  };
  Math.random = () => chance() / 2 ** 32;
  crypto.randomFillSync = fill;
  globalThis.crypto.getRandomValues = fill;
  process.env.TZ = "UTC";
  process.argv = [process.argv[0], "/booklet"];
}

function preparation(python) {
  const names = python.runPython("{}");
  for (const source of prepare) python.runPython(source, { globals: names });
  return (call) => python.runPython(call, { globals: names });
}

// First pass, full library: which modules does an ordinary start with the wheel load?
const full = await loadPyodide({
  env,
  lockFileContents: fs.readFileSync(plan.lock, "utf8"),
  packageBaseUrl: path.dirname(plan.wheel) + path.sep,
});
await full.loadPackage("calc", { messageCallback: () => {} });
const first = preparation(full);
full.FS.writeFile("/tmp/source.whl", fs.readFileSync(plan.sourceWheel));
const compiled = first("pack_package('/tmp/source.whl')").toJs();
full.FS.writeFile("/tmp/package.zip", compiled);
fs.writeFileSync(plan.packageOut, compiled);
full.runPython("import sys; sys.path.insert(0, '/tmp/package.zip')");
first("import_package()");
// A few examples load what is imported late; the second pass answers all of them with just these modules.
first("warm_up(example_requests()[::40])");
first(`import_named(${JSON.stringify(`${plan.named} ${plan.keep.join(" ")}`)})`);
const [stdlib, imageStdlib] = first("strip_stdlib()").toJs();
fs.writeFileSync(plan.stdlibOut, stdlib);
fs.writeFileSync(plan.imageStdlib, imageStdlib);

// Second pass, stripped library: the image.
let data;
const maker = await loadPyodide({
  env,
  _makeSnapshot: true,
  stdLibURL: plan.imageStdlib,
  _seeData: (heap) => { data = heap.slice(0, plan.dataEnd); },
});
maker.FS.writeFile("/tmp/package.zip", compiled);
const second = preparation(maker);
second("sys.path.append('/tmp/package.zip')");
second("import_package()");
second(`import_named(${JSON.stringify(plan.named)})`);
const answered = second("warm_up(example_requests())");
maker.runPython(resident);
second("forget_answers()");
second("sys.path.remove('/tmp/package.zip')");
maker.runPython("forget_files()");
// Whoever looks for garbage later need not look through the image, nor every other answer: a pass takes milliseconds.
const garbage = "gc.collect(); gc.freeze(); gc.set_threshold(50_000, 10, 10)";
maker.runPython(`import gc, linecache; linecache.clearcache(); ${garbage}; del gc, linecache`);
const { ___heap_base: base, _sbrk, _emscripten_stack_get_end, _emscripten_stack_get_current } = maker._module;
const [end, stackEnd, stack] = [_sbrk(0), _emscripten_stack_get_end(), _emscripten_stack_get_current()];
const image = maker.makeMemorySnapshot();
const cleared = clearFree(image.subarray(headSize(image)), { base, end, stackEnd, stack });

const packed = packImage(image, data);
fs.writeFileSync(plan.imageOut, packed);
console.log(JSON.stringify({ answered, image: image.length, cleared, packed: packed.length, stdlib: stdlib.length }));
process.exit(0);
