import { type Lead, type PlacedLead, isExchanged, isTrimmed, leadMassOf } from '#action';
import { type HoleUse, type StripHole, keyStripScene } from '#plot';
import { useMemo } from 'react';
import type { LeadedKey } from '#workshop';
import { useFigures, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import type { LeadAnswer } from './leads-jobs.ts';

/** A hole of a key with what becomes of it, and what a lead in it adds. */
interface KeyHole extends Lead {
  readonly use: HoleUse;
  readonly netMassG?: number;
}

/** The holes of a key after the work, from the front. */
export function holesOf({ leads, plugs }: LeadAnswer, { question }: LeadedKey): readonly KeyHole[] {
  const filled = leads.map((lead): KeyHole => ({ ...lead, use: useOf(lead, question), netMassG: leadMassOf(lead, question) }));
  return [...filled, ...plugs.map((lead): KeyHole => ({ ...lead, use: 'plug' }))].toSorted((a, b) => b.positionMm - a.positionMm);
}

function useOf(lead: PlacedLead, question: LeadedKey['question']): HoleUse {
  if (lead.hole === 'new') return 'new';
  if (isExchanged(lead, question)) return 'exchange';
  return isTrimmed(lead, question) ? 'trim' : 'refill';
}

/** Height of a key where it is not measured: it is drawn, not reckoned with. */
const HEIGHT_MM = 22;

/** One key from its bass side, to scale, with what becomes of its holes and where none may come. */
export function KeyStripView({ leaded, answer }: { readonly leaded: LeadedKey; readonly answer: LeadAnswer }) {
  const say = useSay();
  const figure = useFigures();
  const [width, ref] = useWidth(480);
  const scene = useMemo(() => {
    const holes = holesOf(answer, leaded);
    const [from, to] = [Math.min(-45, ...holes.map(({ positionMm }) => positionMm - 25)), leaded.keyFrontLengthMm + 4];
    const lines = ({ positionMm, diameterMm, boreMm }: KeyHole): readonly string[] => [figure(positionMm, 0), `⌀${figure(diameterMm, 1)}${boreMm === undefined ? '' : ` − ${figure(boreMm, 1)}`}`];
    return keyStripScene({
      fromMm: from, toMm: to, frontMm: leaded.keyFrontLengthMm, backMm: leaded.keyBackLengthMm, heightMm: HEIGHT_MM, keepOutsMm: leaded.question.keepOutsMm ?? [], lineCount: 2,
      holes: holes.map((hole): StripHole => ({ ...hole, lines: lines(hole) })), signs: [{ atMm: 0, text: say('leads.strip.datum') }], pxPerMm: Math.max(width, 300) / (to - from),
      title: say('leads.strip'), description: holes.map((hole) => `${say(`leads.use.${hole.use}.long`)} ${lines(hole).join(' ')}`).join('; '),
    });
  }, [answer, leaded, width, figure, say]);
  return <div ref={ref} className="key-strip"><SceneView scene={scene} /></div>;
}
