import { sumOf } from '#numerics';
import { type Newtons, type Percent, newtons, percent } from '#units';

/** What one note puts on the belly. */
export interface NoteLoad {
  readonly forceN: Newtons;
  /** Of one string. */
  readonly tensionN: Newtons;
  readonly strings: number;
  readonly section?: string | undefined;
  readonly forceUncertaintyN?: Newtons | undefined;
}

export interface Load {
  readonly forceN: Newtons;
  /** Of all strings. */
  readonly totalTensionN: Newtons;
  /** Force as a share of the tension. */
  readonly loadPct: Percent;
  /** Standard uncertainty (k = 1); absent unless every note has one. */
  readonly forceUncertaintyN?: Newtons;
}

export interface BellyLoad extends Load {
  /** In the order in which they first appear; notes without a section are in none. */
  readonly sections: readonly (Load & { readonly section: string; readonly notes: number })[];
}

/**
 * Bearing force of the notes, of each section and of the whole, and its share of all string tension, 100·ΣF/Σ(n·T).
 * The uncertainties of the notes are taken as independent; a datum that is off as a whole moves them all together and is
 * not in them.
 * @source JCGM-100 clause 5.1.2
 */
export function bellyLoadOf(notes: readonly NoteLoad[]): BellyLoad {
  const names = [...new Set(notes.flatMap(({ section }) => (section === undefined ? [] : [section])))];
  const sections = names.map((section) => {
    const inside = notes.filter((note) => note.section === section);
    return { section, notes: inside.length, ...loadOf(inside) };
  });
  return { ...loadOf(notes), sections };
}

function loadOf(notes: readonly NoteLoad[]): Load {
  const force = sumOf(notes.map(({ forceN }) => forceN));
  const tension = sumOf(notes.map(({ tensionN, strings }) => tensionN * strings));
  const doubts = notes.flatMap(({ forceUncertaintyN }) => (forceUncertaintyN === undefined ? [] : [forceUncertaintyN ** 2]));
  return {
    forceN: newtons(force),
    totalTensionN: newtons(tension),
    loadPct: percent((100 * force) / tension),
    ...(doubts.length === notes.length ? { forceUncertaintyN: newtons(Math.sqrt(sumOf(doubts))) } : {}),
  };
}
