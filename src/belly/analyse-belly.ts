import type { KeyNumber } from '#instrument';
import { type BearingFigures, type BearingRead, type Pull, bearingAsRead } from './as-read.ts';
import { type AskedBearing, type BearingFinding, bearingFindingsOf } from './findings.ts';
import { type Load, type NoteLoad, bellyLoadOf } from './load.ts';

/** What is known of the bearing of one note; an absent field is not known, and nothing stands in for it. */
export interface BellyNote {
  readonly key: KeyNumber;
  /** Absent where tension or count of the strings are not known. */
  readonly pull?: Pull;
  readonly read?: BearingRead;
  /** Other ways it was read too, left aside. */
  readonly also: readonly BearingRead[];
}

/** A run of keys between two breaks. */
export interface BellySection {
  readonly name: string;
  readonly firstKey: KeyNumber;
  readonly lastKey: KeyNumber;
}

export interface BellyInput {
  /** Bass to treble, every key once. */
  readonly notes: readonly BellyNote[];
  readonly sections: readonly BellySection[];
  readonly asked: AskedBearing;
}

export interface AnalysedBearing extends BellyNote {
  readonly figures?: BearingFigures;
  /** `index` of each is its place among all notes. */
  readonly findings: readonly BearingFinding[];
}

/** A load with the notes it is the sum of; no load where none has a force. */
export interface CountedLoad {
  readonly load?: Load;
  readonly counted: number;
  readonly of: number;
}

export interface BellyAnalysis {
  readonly notes: readonly AnalysedBearing[];
  readonly sections: readonly (BellySection & CountedLoad)[];
  readonly whole: CountedLoad;
}

/**
 * Works out the bearing of every note, the load of each section and of the whole, and where strings lift or bearing is
 * not as asked. What is not known is left out of sums, and the sums say of how many notes they are.
 * @source OWN
 */
export function analyseBelly({ notes, sections, asked }: BellyInput): BellyAnalysis {
  const sectionOf = (key: KeyNumber): string | undefined => sections.find(({ firstKey, lastKey }) => key >= firstKey && key <= lastKey)?.name;
  const worked = notes.map((note) => ({ ...note, ...(note.read === undefined ? {} : { figures: bearingAsRead(note.read, note.pull) }) }));
  const findings = bearingFindingsOf(worked.map(({ key, figures = {} }) => ({ ...figures, section: sectionOf(key), uncertainty: figures })), asked);
  const analysed = worked.map((note, index): AnalysedBearing => ({ ...note, findings: findings.filter((one) => one.index === index) }));
  return {
    notes: analysed,
    sections: sections.map((section) => ({ ...section, ...countedOf(analysed.filter(({ key }) => key >= section.firstKey && key <= section.lastKey)) })),
    whole: countedOf(analysed),
  };
}

function countedOf(notes: readonly AnalysedBearing[]): CountedLoad {
  const loads = notes.flatMap(({ pull, figures }): readonly NoteLoad[] =>
    (pull === undefined || figures?.forceN === undefined ? [] : [{ ...pull, forceN: figures.forceN, forceUncertaintyN: figures.forceUncertaintyN }]));
  const counts = { counted: loads.length, of: notes.length };
  if (loads.length === 0) return counts;
  const { sections: _, ...load } = bellyLoadOf(loads);
  return { load, ...counts };
}
