// Search from disk. Opened by double click, a page may not start a worker from a file, but it may
// start one from a Blob. The build writes the search worker's source into a script beside it
// (<worker>.source.js); here that source becomes a Blob worker, and messages wait until it is up.
// Over http, and for workers that are Blobs already, nothing changes.

export function searchFromDisk() {
  if (location.protocol !== "file:") return;
  const NativeWorker = window.Worker;

  class WorkerFromFile extends EventTarget {
    constructor(url) {
      super();
      this.started = new Promise((resolve, reject) => {
        const script = document.createElement("script");
        script.src = `${url}.source.js`;
        script.onload = () => {
          const blob = new Blob([window.bookletSearchSource], { type: "text/javascript" });
          const worker = new NativeWorker(URL.createObjectURL(blob));
          worker.onmessage = (event) =>
            this.dispatchEvent(new MessageEvent("message", { data: event.data }));
          worker.onerror = () => this.dispatchEvent(new Event("error"));
          resolve(worker);
        };
        script.onerror = () => reject(new Error(`The search could not start: ${script.src} is missing.`));
        document.head.append(script);
      });
      this.started.catch((error) => console.error(error.message));
    }
    postMessage(data) {
      this.started.then((worker) => worker.postMessage(data), () => {});
    }
    terminate() {
      this.started.then((worker) => worker.terminate(), () => {});
    }
  }

  window.Worker = function (url, options) {
    const address = new URL(url, location.href);
    return address.protocol === "file:"
      ? new WorkerFromFile(address)
      : new NativeWorker(url, options);
  };
  window.Worker.prototype = NativeWorker.prototype;
}
