import { type Block, type ReportDocument, buildReport } from '#report';
import { languageOf } from '#text';
import { bellyOf } from './belly.ts';
import { careBlocksOf } from './care.ts';
import { coverOf } from './cover.ts';
import { findingsOf } from './findings.ts';
import { type ProofInput, otherPartsOf, provedStates } from './input.ts';
import { leastWorkOf } from './least-work.ts';
import { methodOf } from './method.ts';
import { papersOf } from './papers.ts';
import { plotsOf } from './plots.ts';
import { regulationOf } from './regulation.ts';
import { roomOf } from './room.ts';
import { sourcesOf } from './sources.ts';
import { stringsOf } from './strings.ts';
import { summaryOf } from './summary.ts';
import { tablesOf } from './tables.ts';
import { toneOf } from './tone.ts';
import { tuningOf } from './tuning.ts';

/**
 * Builds the proof of an instrument: cover, the touch with summary against tolerance, findings, plots and tables, strings, bearing, tuning,
 * sound and papers, climate and care where any were noted, method, uncertainty, sources and record. Works from one state and from one part alone; what was not stated is said, never filled in.
 * The same report is drawn on screen and on paper.
 */
export function buildProof(input: ProofInput): ReportDocument {
  const { say, instrument, head } = input;
  const title = titleOf(input);
  return buildReport({
    title,
    subtitle: subtitleOf(input),
    language: languageOf(input.locale),
    madeAt: input.printedAt,
    demo: instrument.demo,
    furniture: {
      runningHead: title,
      runningFoot: head === null ? say('proof.foot.files') : say('proof.foot.record', { seq: head.seq, hash: head.hash.slice(0, 12) }),
      demo: say('proof.demo'),
      pageOf: say('proof.pageOf'),
    },
    blocks: [
      ...coverOf(input), ...touchOf(input), ...regulationOf(input), ...stringsOf(input), ...bellyOf(input), ...tuningOf(input), ...toneOf(input), ...roomOf(input), ...papersOf(input), ...careBlocksOf(input), ...methodOf(input), ...sourcesOf(input),
    ],
  });
}

/** Summary, findings, plots and tables of the touch. Where no key was weighed but anything else was noted, it is left out, and the cover says so. */
function touchOf(input: ProofInput): readonly Block[] {
  if (otherPartsOf(input).length > 0) return [];
  return [{ type: 'pageBreak' }, ...summaryOf(input), ...findingsOf(input), ...leastWorkOf(input), ...plotsOf(input), ...tablesOf(input)];
}

/** The title a proof is given by what it is of. */
function titleOf(input: ProofInput): string {
  const { say, instrument: { name } } = input;
  const isOther = otherPartsOf(input).length > 0;
  return input.title ?? (name === '' ? say(isOther ? 'proof.titlePlain.other' : 'proof.titlePlain') : say(isOther ? 'proof.title.other' : 'proof.title', { name }));
}

function subtitleOf(input: ProofInput): string {
  const { say } = input;
  const [first, second] = provedStates(input);
  if (first !== undefined) return say(`proof.subtitle.${second === undefined ? first.state : 'both'}`);
  const others = otherPartsOf(input).map((part) => say(`proof.part.${part}`)).join(', ');
  return others === '' ? say('proof.subtitle.nothing') : say('proof.subtitle.others', { parts: others });
}
