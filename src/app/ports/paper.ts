// The port to what makes files: a table or a picture whose words are made already, and what comes of it.
import type { SheetFormat, Tone } from '../../core/paper.ts';

/** A figure is written as one, also in a table; text is never taken for a formula. */
export type Cell = { readonly figure: string } | { readonly text: string } | undefined;

export interface Sheet {
  readonly format: SheetFormat;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface DrawnBar {
  readonly label: string;
  readonly text: string;
  readonly value: number;
  readonly tone: Tone;
}

export interface Trend {
  readonly is: 'trend';
  readonly title: string;
  readonly points: readonly { readonly label: string; readonly value: number }[];
  readonly band?: { readonly low: number; readonly high: number; readonly text: string };
  /** A value that they are held against, drawn as a line. */
  readonly mark?: number;
  readonly notes?: readonly string[];
  readonly tick: (value: number) => string;
}

export interface Bars {
  readonly is: 'bars';
  readonly title: string;
  readonly bars: readonly DrawnBar[];
  /** What fills the width; else the longest bar does. */
  readonly of?: number;
}

export type DrawnPanel = Bars | Trend;

export interface Picture {
  readonly title: string;
  readonly panels: readonly DrawnPanel[];
}

export interface PaperMaker {
  readonly sheet: (sheet: Sheet) => Promise<Uint8Array>;
  /** A PNG. */
  readonly draw: (picture: Picture) => Promise<Uint8Array>;
}

/** A file that goes with an answer. It is made when it is asked for: a channel that only names it spends nothing. */
export interface AnswerFile {
  readonly name: string;
  readonly type: string;
  readonly caption: string;
  /** May reject; the answer in words stands by itself. */
  readonly bytes: () => Promise<Uint8Array>;
}
