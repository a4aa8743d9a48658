// Python for the page or the worker. Built into the body of the global function bookletEngine
// after Pyodide's own two scripts, which therefore see the `fetch` and `WebAssembly` below and
// cannot reach any address. RUNTIME_ID and LOCK_INFO are put in by the build.
//
// start({ get, fetching }) -> Promise<"snapshot" | "plain">
//   get(name): Promise of a compiled WebAssembly.Module for "core", else of a Response or base64:
//   "memory", "stdlib", "lock", "wheel"
//   fetching(begins): told before and after an answer waits for a file
// answer(text, limit?) -> Promise<text>
//   after `limit` milliseconds Python is interrupted, and the error's type is "KeyboardInterrupt"

const EMPTY_ZIP = new Uint8Array(22);
EMPTY_ZIP.set([0x50, 0x4b, 5, 6]);

let get;
let fetching;
let core; // the compiled core, until Python runs
let python;
let ask; // the one Python object the page side holds: calc.desk.answer
let lateImports; // null once the whole library is there
let until = Infinity; // when the calculation at hand is to be given up

// Python reads a number here every so many instructions, a signal for it to take: its own clock stops it, as nobody
// else can while it runs. Given once, then time to end.
const SIGINT = 2;
const alarm = {
  get 0() {
    const now = performance.now();
    if (now < until) return 0;
    until = now + 500;
    return SIGINT;
  },
  set 0(_taken) {},
};

async function bytes(name) {
  const response = await unpacked(await get(name));
  try {
    return new Uint8Array(await response.arrayBuffer());
  } catch (error) {
    throw error instanceof RangeError ? error : new Error(`${name} is damaged (${error})`);
  }
}

/** Settings that restore a memory file, which must come from the very files this engine is of. */
function imageSettings(file) {
  if (new TextDecoder().decode(file.subarray(0, 64)) !== RUNTIME_ID) {
    throw new Error("the memory image belongs to another build");
  }
  const [heapSize, headSize, check, count, dataSize] = new Uint32Array(file.buffer, 64, 5);
  const kindsAt = 84 + headSize;
  const kinds = file.slice(kindsAt, kindsAt + count);
  let data;
  return {
    _loadSnapshot: file.slice(84, kindsAt),
    _heapSize: heapSize,
    _seeData(heap) {
      data = new Int32Array(heap.slice(0, dataSize).buffer);
    },
    _fillHeap(heap) {
      fillHeap(heap, kinds, data, new Int32Array(file.buffer, kindsAt + count), check);
      file = data = null;
    },
  };
}

/** Turn a fresh core's heap into the imaged one; pack_image.mjs describes the format. */
function fillHeap(heap, kinds, data, content, check) {
  const words = new Int32Array(heap.buffer);
  const size = 1024; // words in a page
  let sum = 0;
  let from = 0;
  for (let page = 0; page < kinds.length; page++) {
    const at = page * size;
    const kind = kinds[page];
    if (kind === 0) words.fill(0, at, at + size);
    else if (kind === 1) words.set(content.subarray(from, (from += size)), at);
    else {
      for (let i = at; i < at + size; i += 16) sum = Math.imul(sum ^ data[i], 16777619);
      words.set(data.subarray(at, at + size), at);
      if (kind === 3) for (let i = at; i < at + size; i++) words[i] ^= content[from++];
    }
  }
  if (sum >>> 0 !== check) throw new Error("the core started differently from the imaged one");
}

async function boot(options) {
  files = options.files;
  core ??= await get("core");
  const module = core;
  let refused;
  const instantiated = new Promise((_, reject) => { refused = reject; });
  // Pyodide only prints why an instantiation failed and then waits for ever.
  instantiate = (imports) =>
    globalThis.WebAssembly.instantiate(module, imports).then(
      (instance) => ({ instance, module }),
      (error) => { refused(error); throw error; },
    );
  const settings = {
    indexURL: "memory:/",
    packageBaseUrl: "memory:/",
    stdLibURL: "memory:/python_stdlib.zip",
    lockFileContents: options.lock,
    stdin: () => null,
    stdout: () => {},
    stderr: () => {},
    env: { PYTHONHASHSEED: "0" },
    ...options.settings,
  };
  try {
    return await Promise.race([loadPyodide.loadPyodide(settings), instantiated]);
  } finally {
    files = {};
    instantiate = null;
  }
}

async function startFromMemory() {
  const settings = imageSettings(await bytes("memory"));
  python = await boot({
    files: { "python_stdlib.zip": EMPTY_ZIP },
    lock: { info: JSON.parse(LOCK_INFO), packages: {} },
    settings,
  });
  lateImports = python.globals.get("late_imports");
  const wake = python.globals.get("wake");
  wake();
  wake.destroy();
  ask = python.globals.get("answer");
}

async function startPlainly() {
  const [stdlib, wheel, lockFile] = await Promise.all(["stdlib", "wheel", "lock"].map(bytes));
  const lock = JSON.parse(new TextDecoder().decode(lockFile));
  python = await boot({ files: { "python_stdlib.zip": stdlib }, lock });
  files = { [lock.packages.calc.file_name]: wheel };
  await python.loadPackage("calc", { messageCallback() {}, errorCallback() {}, checkIntegrity: false });
  files = {};
  lateImports = null;
  ask = python.runPython("from calc.desk import answer; answer");
}

async function start(source) {
  get = source.get;
  fetching = source.fetching ?? (() => {});
  try {
    await startFromMemory();
    core = null;
    python.setInterruptBuffer(alarm);
    return "snapshot";
  } catch (error) {
    console.info(`Fast start not possible (${error}); starting step by step.`);
  }
  // Whatever the first attempt left behind is of no use to the second.
  python = ask = lateImports = undefined;
  await startPlainly();
  core = null;
  python.setInterruptBuffer(alarm);
  return "plain";
}

function put(text, limit) {
  until = performance.now() + limit;
  try {
    return { reply: ask(text) };
  } catch (error) {
    return { error };
  } finally {
    until = Infinity;
  }
}

async function answer(text, limit = Infinity) {
  let outcome = put(text, limit);
  if (lateImports?.()) {
    // The image has no files: bring the library it was made with, and ask again.
    try {
      fetching(true);
      const library = await bytes("stdlib").finally(() => fetching(false));
      python.FS.writeFile("/lib/python313.zip", library);
      python.runPython("forget_files()");
      lateImports.destroy();
      lateImports = null;
      outcome = put(text, limit);
    } catch (error) {
      console.info(`The library could not be fetched (${error}).`);
    }
  }
  if (outcome.error) throw outcome.error;
  return outcome.reply;
}

return { start, answer };
