import type { Recording, State } from '#instrument';
import { useKept } from '../../kept/kept.ts';
import { usePiano } from '../../api/piano.tsx';

/** What holds for every recording of one sitting at the microphone. */
export interface Take {
  readonly state: State;
  readonly contents: Recording['contents'];
  readonly place: string;
  readonly device: string;
  readonly remark: string;
}

const emptyTake: Take = { state: 'found', contents: 'note', place: '', device: '', remark: '' };

/** The sitting as it was left, in this window. */
export function useTake(): readonly [Take, (change: Partial<Take>) => void] {
  const { id } = usePiano();
  const [take, keep] = useKept<Take>(`wrestplank.tone.take.${id}`, emptyTake);
  return [take, (change) => { keep({ ...take, ...change }); }];
}
