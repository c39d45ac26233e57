import type { WeighingSession } from '#instrument';
import { useMutation } from '@tanstack/react-query';
import { useMemo } from 'react';
import { call } from '../../api/client.ts';
import { usePiano } from '../../api/piano.tsx';
import { refreshPiano } from '../../api/queries.ts';
import { sayProblem } from '../../api/say-problem.ts';
import { useSay } from '../../language/use-say.ts';
import { toast } from '../../toast/toasts.ts';
import { acknowledgedSeq } from '../../undo/undo-stack.ts';
import { useDesk } from '../desk.tsx';
import { useRows } from '../sheet/use-sheet.ts';
import { unassignedIn } from './unassigned.ts';

/** Offers to say of the weights that stand without a session that they belong to this one: one step, undone as one. */
export function AssignStanding({ session }: { readonly session: WeighingSession }) {
  const say = useSay();
  const { id } = usePiano();
  const { sheet, state } = useDesk();
  const rows = useRows(sheet, state);
  const readings = useMemo(() => unassignedIn(rows), [rows]);
  const { mutate, isPending } = useMutation({
    mutationFn: () => call('assignReadings', { params: { id, sid: session.id }, body: { readings: [...readings] } }),
    onSuccess: ({ seq, readings: moved }) => {
      if (moved.length > 0) acknowledgedSeq(id, seq);
      toast(say('readings.session.assigned', { count: moved.length }));
    },
    onError: (failure) => { toast(say('readings.session.notAssigned', { why: sayProblem(failure, say) }), { tone: 'bad' }); },
    onSettled: () => refreshPiano(id),
  });
  if (readings.length === 0) return null;
  return (
    <div className="row session-assign">
      <span>{say('readings.session.unassigned', { count: readings.length })}</span>
      <button type="button" className="button" disabled={isPending} onClick={() => { mutate(); }}>{say('readings.session.assign', { count: readings.length })}</button>
    </div>
  );
}
