import { Suspense, lazy, useMemo, useState } from 'react';
import { changePiano, openCycle } from '../api/mutations.ts';
import { usePiano } from '../api/piano.tsx';
import { type Command, useCommands } from '../commands/registry.ts';
import { useSay } from '../language/use-say.ts';
import { changesOf } from '../pianos/piano-form.ts';

const PianoDialog = lazy(() => import('../pianos/piano-dialog.tsx'));
const CycleDialog = lazy(() => import('./cycle-dialog.tsx'));

/** What can be done to the card of a piano: correct it, open the next stay. */
export function PianoActions() {
  const say = useSay();
  const { instrument, isCurrent } = usePiano();
  const [open, setOpen] = useState<'card' | 'cycle' | undefined>();
  const commands = useMemo((): readonly Command[] => [
    { id: 'piano.edit', label: 'pianos.edit', group: 'command.group.piano', perform: () => { setOpen('card'); } },
    { id: 'piano.cycle', label: 'story.cycle.open', group: 'command.group.piano', perform: () => { setOpen('cycle'); } },
  ], []);
  useCommands(commands);
  const close = (): void => { setOpen(undefined); };
  return (
    <div className="row no-print">
      <button type="button" className="button" onClick={() => { setOpen('card'); }}>
        {say('pianos.edit')}
      </button>
      {isCurrent && (
        <button type="button" className="button" onClick={() => { setOpen('cycle'); }}>
          {say('story.cycle.open')}
        </button>
      )}
      <Suspense fallback={null}>
        {open === 'card' && (
          <PianoDialog
            instrument={instrument}
            onClose={close}
            onKept={close}
            keep={async (draft) => {
              const change = changesOf(instrument, draft);
              if (Object.keys(change).length > 0) await changePiano(instrument.id, change);
              return instrument.id;
            }}
          />
        )}
        {open === 'cycle' && <CycleDialog onClose={close} onOpen={() => openCycle(instrument.id)} cycle={instrument.cycle + 1} />}
      </Suspense>
    </div>
  );
}
