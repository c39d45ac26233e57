import type { State } from '#instrument';
import type { Scene } from '#plot';
import type { Language } from '#text';

/** How a piece of text stands out: `quiet` for what was not stated, `flag` for what is to be looked at. */
export type Tone = 'plain' | 'strong' | 'quiet' | 'flag';

/** A derived figure by its name, so that a screen can open it to how it was made; paper shows the text alone. */
export interface FigureName {
  /** What it is a figure of: the row of all keys, or one key, string or bearing. */
  readonly of: 'keys' | 'touch' | 'string' | 'bearing';
  readonly state: State;
  /** The field of the operation's answer that is the figure. */
  readonly output: string;
  /** What the figure is, in the reader's words. */
  readonly what: string;
  /** Key number, for what is of one key. */
  readonly key?: number;
}

/** A cell of a table or a value of a list: text with its tone, and for a derived figure its name. */
export interface Cell {
  readonly text: string;
  readonly tone: Tone;
  readonly opens?: FigureName;
}

export interface HeadingBlock {
  readonly type: 'heading';
  /** 1 opens a part of the document, 2 a section, 3 a paragraph with a name. */
  readonly level: 1 | 2 | 3;
  readonly text: string;
}

export interface ParagraphBlock {
  readonly type: 'paragraph';
  readonly text: string;
  readonly size: 'lead' | 'body' | 'small';
}

export interface KeyValuesBlock {
  readonly type: 'keyValues';
  readonly rows: readonly { readonly label: string; readonly value: Cell }[];
}

/** One large figure of a state beside the same figure of the others. */
export interface HeadlineBlock {
  readonly type: 'headline';
  readonly items: readonly { readonly state: State; readonly label: string; readonly value: string; readonly detail: string; readonly opens?: FigureName }[];
}

export interface Column {
  readonly label: string;
  readonly align: 'start' | 'end';
  /** Share of the width; `auto` takes what the content needs. */
  readonly width: number | 'auto';
}

export interface TableBlock {
  readonly type: 'table';
  /** Says what the table holds to those who do not see the page around it. */
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Strips the rows are laid into side by side on paper, each with the head above it. */
  readonly strips: 1 | 2;
  /** `large`: to be read from the wall, an arm's length and more away. */
  readonly size?: 'large';
  /** The first cell of each row names the row. */
  readonly rowHeads: boolean;
}

export interface FigureBlock {
  readonly type: 'figure';
  readonly scene: Scene;
  readonly alt: string;
  readonly caption: string;
  /** Width on paper of a drawing true to scale; without it a drawing fills the page. */
  readonly widthMm?: number;
}

/** `caution` names a danger or a limit of what may be concluded; `note` explains. */
export interface NoteBlock {
  readonly type: 'note' | 'caution';
  readonly text: string;
}

export interface ListBlock {
  readonly type: 'list';
  readonly items: readonly string[];
}

export interface PageBreakBlock {
  readonly type: 'pageBreak';
}

/** The blocks that follow one another on screen and on paper. */
export type Block = HeadingBlock | ParagraphBlock | KeyValuesBlock | HeadlineBlock | TableBlock | FigureBlock | NoteBlock | ListBlock | PageBreakBlock;

/** A report as pure data, the same for screen and for any paper. */
export interface ReportDocument {
  readonly title: string;
  readonly subtitle: string;
  readonly language: Language;
  /** Day it was made, ISO 8601. */
  readonly madeAt: string;
  /** Invented for demonstration: every page says so. */
  readonly demo: boolean;
  readonly furniture: Furniture;
  /** `wide`: the paper lies on its long side, with narrow margins, for drawings true to scale. */
  readonly page?: 'wide';
  readonly blocks: readonly Block[];
}

/** What stands in the margins of each page. */
export interface Furniture {
  readonly runningHead: string;
  readonly runningFoot: string;
  readonly demo: string;
  /** With `{page}` and `{pages}` to be filled in by whoever counts the pages. */
  readonly pageOf: string;
}
