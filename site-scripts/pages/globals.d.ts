// What stands on the window: the door to Python (runtime/loader.js) and what libraries of others leave there.

/** Where the library of QR codes is, from this script; put in by the build. */
declare const QR_LIBRARY: string;

/** Where the script with the fonts of saved papers is, from this script; put in by the build. */
declare const PAPER_FONTS: string;

interface Problem {
  field: string | null;
  message: string;
  choices?: { words: string; text: string }[];
}

/** calc's answer: `data` is what the operation gives, which only calc knows. */
type Reply = { readback?: Record<string, { unit: string; line: string }> } & (
  | { ok: true; data: any; errors?: undefined; settings?: undefined; superseded?: undefined }
  | { ok: false; errors: Problem[]; settings?: boolean; superseded?: boolean; data?: undefined }
);

interface Runtime {
  state: "idle" | "starting" | "ready" | "failed";
  how: { place: string; start: string; source: string } | null;
  message: string;
  kept: any;
  ask(operation: string, data: object, options?: { channel?: string; limit?: number }): Promise<Reply>;
  start(): void;
  onchange(listener: (state: string) => void): () => void;
}

interface Window {
  bookletRuntime?: Runtime;
  bookletSearchSource: string;
  bookletPaperFonts?: string;
  qrcode?: (kind: number, correction: string) => {
    addData(text: string): void;
    make(): void;
    getModuleCount(): number;
    isDark(row: number, column: number): boolean;
  };
  Worker: typeof Worker;
}

/** What a selector finds has the type its place in the page says, which no comment repeats. */
interface ParentNode {
  querySelector(selectors: string): any;
  querySelectorAll(selectors: string): NodeListOf<any>;
}

interface Element {
  closest(selectors: string): any;
}

interface EventTarget {
  closest?(selectors: string): any;
}

interface DocumentEventMap {
  "booklet:leaving": CustomEvent;
  "booklet:answer": CustomEvent;
}
