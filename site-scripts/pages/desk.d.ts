// The JSON boundary between page and calc (calc/desk), as types: what is asked by operation, and what is answered.

/** A sentence about a box of the form; without a field it is about the whole. */
interface Problem {
  field: string | null;
  message: string;
  choices?: { words: string; text: string }[];
}

/** A sentence about one box. */
type FieldNote = Problem & { field: string };

/** What was understood of a box: the unit it is counted in, as written and as spoken, and the line below it. */
interface Back {
  unit: string;
  spoken: string;
  line: string;
}

/** The boxes of a form: typed text by name; a table is a list of rows, each with text by column. */
type Inputs = Record<string, string | Record<string, string>[]>;

/** A question with its data, as "solve", "drawings", "sheet" and "mark" want it. */
interface QuestionAsked {
  question: string;
  inputs: Inputs;
  find: string;
  settings?: Record<string, string>;
  variant?: string;
  typed?: string[];
}

/** An answer to one part of a sheet. */
interface PartTyped {
  said?: number[];
  [kind: string]: string | number[] | Record<string, string> | undefined;
}

interface PartMarked {
  part: string;
  state: string;
  html: string;
  earned: number;
  possible: number;
  fits?: { keys: string[] }[];
}

interface PaperAsked {
  topics: string[];
  count: string;
  marks: string;
  level: string;
  seed: string;
  own: number | string;
  draw: string;
  heading: string;
  space: string;
  memo: string;
  settings: Record<string, string>;
  learner?: string;
  as?: string[];
}

/** The two pieces of a paper that a page shows. */
type PaperPiece = "paper_html" | "memo_html";

/** The notations of a file that calc writes. */
type FileNotation = "markdown" | "latex";

/** One learner's line of the answers to a question, with what stands above and below it. */
interface AnswerRow {
  number: number;
  head: string;
  row: string;
  foot: string;
}

/** A paper; of its notations those that were asked for. */
type PaperMade = Partial<Record<PaperPiece | FileNotation | `${FileNotation}_memo`, string>> & {
  marks: number;
  questions: number;
  said: string;
  answers: Record<"html" | FileNotation, { title: string; questions: AnswerRow[] }>;
  named: string[];
  seed: number;
  level: number | "rising";
  own: number;
  draw: number;
};

/** An attempt at a question, as the revision rule is told of it. */
interface AttemptTold {
  day: string;
  level: number;
  earned: number;
  possible: number;
  mistakes: string[];
}

/** By operation what is asked, and the data of an answer. */
interface Desk {
  solve: {
    asked: QuestionAsked & { readback?: boolean; drawn?: boolean; opened?: string[]; as?: ("html" | "text" | "latex")[] };
    answered: {
      html?: string;
      text?: string;
      latex?: string;
      spoken: string;
      understood: Record<string, string>;
      notes: FieldNote[];
    };
  };
  boxes: { asked: { question: string; inputs: Inputs; find: string }; answered: { boxes: string[] } };
  drawings: {
    asked: QuestionAsked & { opened?: string[] };
    answered: { drawings: Record<string, string>; parts?: Record<string, string> };
  };
  rehearse: { asked: { question: string; turn: number }; answered: { more: boolean } };
  settings: { asked: { settings: Record<string, string> }; answered: object };
  sheet: { asked: QuestionAsked; answered: { html: string; scene: boolean } };
  mark: {
    asked: QuestionAsked & { answers: Record<string, PartTyped> };
    answered: { parts: PartMarked[]; earned: number; possible: number; problems: FieldNote[] };
  };
  practice: {
    asked: { question: string; seed: number | string; level: number | string; draw: number | string };
    answered: {
      question: string;
      inputs: Inputs;
      find: string;
      variant: string;
      seed: number;
      level: number;
      draw: number;
      title: string;
      figure: string;
      hints: { part: string; number: string; html: string[] }[];
    };
  };
  revision: {
    asked: { today: string; history: Record<string, AttemptTold[]> };
    answered: { html: string; next: { question: string; level: number } | null; late: number[] };
  };
  paper: { asked: PaperAsked; answered: PaperMade };
}

type Operation = keyof Desk;

/** calc's answer. A request that a later one has taken the place of, or whose settings cannot be, gets errors too. */
type Reply<O extends Operation> = { readback?: Record<string, Back> } & (
  | { ok: true; data: Desk[O]["answered"]; errors?: undefined; settings?: undefined; superseded?: undefined }
  | { ok: false; errors: Problem[]; settings?: boolean; superseded?: boolean; data?: undefined }
);
