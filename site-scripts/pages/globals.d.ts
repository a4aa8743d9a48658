// What stands on the window: the door to Python (runtime/loader.js) and what libraries of others leave there.

/** Where the library of QR codes is, from this script; put in by the build. */
declare const QR_LIBRARY: string;

/** Where the script with the fonts of saved papers is, from this script; put in by the build. */
declare const PAPER_FONTS: string;

type RuntimeState = "idle" | "starting" | "ready" | "failed";

/** What the scripts of a page hand to the page that follows when it reloads itself: states of forms, and other boxes. */
interface Kept {
  forms?: [question: string, state: string][];
  boxes?: [key: string, entry: string | boolean][];
}

interface Runtime {
  state: RuntimeState;
  how: { place: string; start: string; source: string } | null;
  message: string;
  kept: Kept | null;
  ask<O extends Operation>(
    operation: O, data: Desk[O]["asked"], options?: { channel?: string; limit?: number },
  ): Promise<Reply<O>>;
  start(): void;
  onchange(listener: (state: RuntimeState) => void): () => void;
}

interface Window {
  /** Where the theme's script hears that a page is parsed. */
  document$?: { next(page: Document): void };
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

interface DocumentEventMap {
  "booklet:leaving": CustomEvent<Kept>;
  "booklet:answer": CustomEvent<{ form: import("./forms.js").Form; reply: Desk["solve"]["answered"] | null }>;
}
