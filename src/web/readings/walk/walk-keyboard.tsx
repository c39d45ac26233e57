import { type KeyNumber, noteNameOf } from '#instrument';
import { type KeySign, keyboardScene } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import { useDesk } from '../desk.tsx';
import { useRows } from '../sheet/use-sheet.ts';

interface WalkKeyboardProps {
  readonly keys: readonly KeyNumber[];
  /** Keys of the walk with every figure asked for. */
  readonly isDone: (key: KeyNumber) => boolean;
  readonly current: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

const SHORTEST_KEY_PX = 56;

/** The keyboard with the key asked for lit; a dash where something is still open, a cross where a weighing gave no number. */
export const WalkKeyboard = memo(function WalkKeyboard({ keys, isDone, current, onKey }: WalkKeyboardProps) {
  const say = useSay();
  const { compass } = usePiano();
  const { sheet, state } = useDesk();
  const rows = useRows(sheet, state);
  const [widthPx, ref] = useWidth(760);
  const scene = useMemo(() => {
    const signs = new Map<KeyNumber, KeySign>();
    for (const key of keys) {
      if (rows[key - 1]?.outcome === true) signs.set(key, 'outcome');
      else if (!isDone(key)) signs.set(key, 'unmeasured');
    }
    return keyboardScene({
      compass, signs, widthPx, highlightKey: current, title: say('readings.walk.keyboard'),
      description: current === undefined ? '' : noteNameOf(compass, current),
      keyHeightPx: Math.max(SHORTEST_KEY_PX, Math.min(76, widthPx * 0.08)),
    });
  }, [compass, current, isDone, keys, rows, say, widthPx]);
  return (
    <div ref={ref} className="walk-keyboard">
      <SceneView scene={scene} onKey={onKey} />
    </div>
  );
});
