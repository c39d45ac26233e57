import { PianoProvider, usePiano } from '../api/piano.tsx';
import { useDays, useSay } from '../language/use-say.ts';
import { WhenReadings } from '../shell/when-readings.tsx';
import { Fold } from './fold.tsx';
import type { StayDays } from './owners-line.ts';
import { StayStory } from './stay-story.tsx';
import { sayStayDays } from './use-event-days.ts';

/** The heading over all stays: where there is but one, it is not folded. */
export const STAYS = 'story-stays';
const idOf = (cycle: number): string => `stay-${String(cycle)}`;

/** Opens the story of a stay and goes there. */
export function openStay(cycle: number): void {
  const fold = document.getElementById(idOf(cycle));
  if (fold instanceof HTMLDetailsElement) fold.open = true;
  const head = fold?.querySelector('summary') ?? document.getElementById(STAYS);
  head?.focus();
  head?.scrollIntoView({ block: 'start' });
}

/** Every stay in the shop, the latest first: what was done and how it came out. The one looked at is open. */
export function StayFolds({ stays }: { readonly stays: readonly StayDays[] }) {
  const say = useSay();
  const day = useDays();
  const { file, cycle: looked, instrument } = usePiano();
  return (
    <div className="folds">
      {Array.from({ length: instrument.cycle }, (_, index) => instrument.cycle - index).map((cycle) => {
        const days = stays.find((stay) => stay.cycle === cycle);
        const when = days === undefined ? '' : sayStayDays(days, day);
        return (
          <Fold key={cycle} id={idOf(cycle)} isOpen={cycle === looked} title={<><strong>{say('story.stay', { cycle })}</strong> <span className="soft">{when}</span></>}>
            <PianoProvider file={file} cycle={cycle}>
              <WhenReadings><StayStory /></WhenReadings>
            </PianoProvider>
          </Fold>
        );
      })}
    </div>
  );
}
