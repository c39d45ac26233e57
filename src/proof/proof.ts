import { type ReportDocument, buildReport } from '#report';
import { languageOf } from '#text';
import { coverOf } from './cover.ts';
import { findingsOf } from './findings.ts';
import { type ProofInput, provedStates } from './input.ts';
import { methodOf } from './method.ts';
import { plotsOf } from './plots.ts';
import { sourcesOf } from './sources.ts';
import { stringsOf } from './strings.ts';
import { summaryOf } from './summary.ts';
import { tablesOf } from './tables.ts';

/**
 * Builds the proof of an instrument's touch: cover, summary against tolerance, findings, plots, tables, the strings where any were noted, method,
 * uncertainty, sources and record. Works from one state alone; what was not stated is said, never filled in.
 * The same report is drawn on screen and on paper.
 */
export function buildProof(input: ProofInput): ReportDocument {
  const { say, instrument, head } = input;
  const title = input.title ?? (instrument.name === '' ? say('proof.titlePlain') : say('proof.title', { name: instrument.name }));
  return buildReport({
    title,
    subtitle: say(`proof.subtitle.${subtitleOf(input)}`),
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
      ...coverOf(input), { type: 'pageBreak' }, ...summaryOf(input), ...findingsOf(input),
      ...plotsOf(input), ...tablesOf(input), ...stringsOf(input), ...methodOf(input), ...sourcesOf(input),
    ],
  });
}

function subtitleOf(input: ProofInput): 'both' | 'found' | 'finished' | 'nothing' {
  const [first, second] = provedStates(input);
  if (first === undefined) return 'nothing';
  return second === undefined ? first.state : 'both';
}
