import { type Compass, type KeyNumber, keyCountOf, noteNameOf } from '#instrument';
import { type KeySign, keyboardScene, keyUnder, plotMargins } from '#plot';
import { type KeyboardEvent, useId, useMemo } from 'react';
import { useSay } from '../language/use-say.ts';
import { useSteady } from '../ui/use-steady.ts';
import { pointAtKey, usePointedKey } from './pointed-key.ts';
import { frameOf } from './scene-frame.ts';
import { Marks } from './scene-view.tsx';
import './leaves.css';

interface KeyboardRowProps {
  readonly compass: Compass;
  readonly signs: ReadonlyMap<KeyNumber, KeySign>;
  readonly widthPx: number;
  /** What is said of the whole row. */
  readonly label: string;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
  /** What is said of a key beside its name and sign. */
  readonly describe?: (key: KeyNumber) => string;
  readonly keyHeightPx?: number;
  /** `plot`: the keys stand under the keys of a plot of the same width. `full`: edge to edge. */
  readonly align?: 'plot' | 'full';
}

/** The row of keys drawn as keys, each with its sign. One stop of the Tab key; arrows walk it, Page keys by octave. */
export function KeyboardRow({ compass, signs: told, widthPx, label, selected, onSelect, describe, keyHeightPx, align = 'full' }: KeyboardRowProps) {
  const say = useSay();
  const signs = useSteady(told, sameSigns);
  const id = useId();
  const pointed = usePointedKey();
  const margins = align === 'plot' ? { leftPx: plotMargins.leftPx, rightPx: plotMargins.rightPx } : {};
  const scene = useMemo(
    () => keyboardScene({ compass, signs, widthPx, title: label, description: '', highlightKey: selected, ...margins, ...(keyHeightPx === undefined ? {} : { keyHeightPx }) }),
    // eslint-disable-next-line react-hooks/exhaustive-deps -- the margins follow from `align`
    [compass, signs, widthPx, label, selected, keyHeightPx, align],
  );
  const keys = keyCountOf(compass);
  const wordsOf = (key: KeyNumber): string =>
    [noteNameOf(compass, key), say(`shell.key.${signs.get(key) ?? 'unmeasured'}`), describe?.(key) ?? ''].filter((part) => part !== '').join(', ');
  const onKeyDown = (event: KeyboardEvent): void => {
    const to = stepOf(event.key, selected ?? 0, keys);
    if (to === undefined) return;
    event.preventDefault();
    onSelect(to);
    pointAtKey(to);
  };
  const keyAt = (clientX: number, box: DOMRect): KeyNumber | undefined => keyUnder(scene, ((clientX - box.left) * scene.widthPx) / box.width);
  const strip = scene.columns.find(({ key }) => key === pointed);
  return (
    <svg
      className="scene scene-pressable"
      {...frameOf(scene)}
      role="slider"
      tabIndex={0}
      id={id}
      aria-label={label}
      aria-orientation="horizontal"
      aria-valuemin={1}
      aria-valuemax={keys}
      aria-valuenow={selected ?? 1}
      aria-valuetext={selected === undefined ? say('shell.key.none') : wordsOf(selected)}
      onKeyDown={onKeyDown}
      onPointerMove={(event) => {
        pointAtKey(keyAt(event.clientX, event.currentTarget.getBoundingClientRect()));
      }}
      onPointerLeave={() => {
        pointAtKey(undefined);
      }}
      onClick={(event) => {
        const key = keyAt(event.clientX, event.currentTarget.getBoundingClientRect());
        if (key !== undefined) onSelect(key);
      }}
    >
      <Marks scene={scene} />
      {strip !== undefined && <rect className="scene-strip" x={strip.xPx} y={0} width={strip.widthPx} height={scene.heightPx} />}
    </svg>
  );
}

const sameSigns = (one: ReadonlyMap<KeyNumber, KeySign>, other: ReadonlyMap<KeyNumber, KeySign>): boolean =>
  one.size === other.size && [...one].every(([key, sign]) => other.get(key) === sign);

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -12, PageUp: 12 };

/** The key a stroke leads to; undefined for strokes that are not for walking. */
function stepOf(stroke: string, from: KeyNumber, keys: number): KeyNumber | undefined {
  if (stroke === 'Home') return 1;
  if (stroke === 'End') return keys;
  const step = STEPS[stroke];
  return step === undefined ? undefined : Math.min(keys, Math.max(1, from + step));
}
