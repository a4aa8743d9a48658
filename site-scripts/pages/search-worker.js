// The worker of the search, started when the find box is opened: until then a page fetches neither it nor the index
// (build_site.py has the theme wait with the index). Opened from disk, a page may not start a worker from a file, but
// it may start one from a Blob: the build writes the worker's source into a script beside it (<worker>.source.js).

const SETUP = 0; // the theme's first message, which brings the index

class LateWorker extends EventTarget {
  /** @param {string} url */
  constructor(url) {
    super();
    this.url = url;
    /** @type {unknown[]} */
    this.waiting = [];
    /** @type {Promise<Worker> | null} */
    this.started = null;
  }

  /** @param {{ type: number }} message */
  postMessage(message) {
    if (message.type === SETUP) this.started ??= this.start();
    if (this.started) this.started.then((worker) => worker.postMessage(message), () => {});
    else this.waiting.push(message);
  }

  async start() {
    try {
      const worker = new NativeWorker(location.protocol === "file:" ? await blobOf(this.url) : this.url);
      worker.onmessage = (event) => this.dispatchEvent(new MessageEvent("message", { data: event.data }));
      worker.onerror = () => this.dispatchEvent(new Event("error"));
      for (const message of this.waiting) worker.postMessage(message);
      return worker;
    } catch (problem) {
      console.error(String(problem));
      throw problem;
    }
  }

  terminate() {
    this.started?.then((worker) => worker.terminate(), () => {});
  }
}

const NativeWorker = window.Worker;

/** @param {string} url */
function blobOf(url) {
  return /** @type {Promise<string>} */ (new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = `${url}.source.js`;
    script.onload = () => resolve(URL.createObjectURL(new Blob([window.bookletSearchSource], { type: "text/javascript" })));
    script.onerror = () => reject(new Error(`The search could not start: ${script.src} is missing.`));
    document.head.append(script);
  }));
}

export function startSearchLate() {
  if (!NativeWorker) return;
  // A stand-in for the search's worker alone; any other worker is the browser's own.
  const standIn = function (/** @type {string | URL} */ url, /** @type {WorkerOptions} */ options) {
    const address = new URL(url, location.href).href;
    return address.includes("/javascripts/workers/search") ? new LateWorker(address) : new NativeWorker(url, options);
  };
  standIn.prototype = NativeWorker.prototype;
  // It does for the theme what it asks of a worker, which is not all that one has.
  window.Worker = /** @type {typeof Worker} */ (/** @type {unknown} */ (standIn));
}
