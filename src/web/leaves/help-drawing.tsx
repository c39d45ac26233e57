import type { QuantityName } from '#instrument';
import type { ReactNode } from 'react';
import { useSay } from '../language/use-say.ts';

type Drawn = 'weightOnKey' | 'frontWeight' | 'hammerWeight' | 'wippenWeight' | 'keyArms' | 'wippenArms' | 'hammerArms';

const drawingOf: Partial<Readonly<Record<QuantityName, Drawn>>> = {
  downWeightG: 'weightOnKey', upWeightG: 'weightOnKey', keyFrictionG: 'weightOnKey',
  frontWeightG: 'frontWeight', hammerWeightG: 'hammerWeight', wippenWeightG: 'wippenWeight',
  keyFrontMm: 'keyArms', keyBackMm: 'keyArms', wippenHeelMm: 'wippenArms', wippenJackMm: 'wippenArms', rollerMm: 'hammerArms', hammerMm: 'hammerArms',
};

/** Marks a length between two points, with its letter. */
function Arm({ from, to, y, letter }: { readonly from: number; readonly to: number; readonly y: number; readonly letter: string }) {
  return (
    <>
      <path className="measure" d={`M${String(from)} ${String(y)}H${String(to)}M${String(from)} ${String(y - 4)}v8M${String(to)} ${String(y - 4)}v8`} />
      <text x={(from + to) / 2} y={y - 5} textAnchor="middle">
        {letter}
      </text>
    </>
  );
}

function Scale({ x, y }: { readonly x: number; readonly y: number }) {
  return <path className="part" d={`M${String(x - 24)} ${String(y)}h48v6h-8l6 16h-44l6-16h-8z`} />;
}

const key = <path className="wood" d="M14 44H300V58H14zM14 40H110V44H14z" />;
const balancePin = <path className="fine" d="M160 36V70M152 70h16l-4-10h-8z" />;

const drawings: Readonly<Record<Drawn, ReactNode>> = {
  weightOnKey: (
    <>
      {key}
      {balancePin}
      <path className="weight" d="M20 24h20v16H20z" />
      <Arm from={14} to={30} y={18} letter="" />
      <path className="fine" d="M30 66v20m-4 -6l4 6l4 -6" />
    </>
  ),
  frontWeight: (
    <>
      {key}
      <path className="fine" d="M160 58l-7 22h14z" />
      <path className="fine" d="M30 58v16" />
      <Scale x={30} y={74} />
    </>
  ),
  hammerWeight: (
    <>
      <path className="wood" d="M60 44H250V50H60z" />
      <circle className="part" cx="66" cy="47" r="8" />
      <path className="part" d="M240 20h16v30h-16zM242 50q6 26 12 0z" />
      <path className="fine" d="M248 66v8" />
      <Scale x={248} y={74} />
    </>
  ),
  wippenWeight: (
    <>
      <path className="wood" d="M50 40H240V50H50z" />
      <circle className="part" cx="56" cy="45" r="8" />
      <path className="part" d="M150 50h16v14h-16zM232 10h8v32h-8z" />
      <path className="fine" d="M158 64v10" />
      <Scale x={158} y={74} />
    </>
  ),
  keyArms: (
    <>
      {key}
      {balancePin}
      <path className="dark" d="M262 32h8v12h-8z" />
      <Arm from={30} to={160} y={88} letter="a" />
      <Arm from={160} to={266} y={88} letter="b" />
    </>
  ),
  wippenArms: (
    <>
      <path className="wood" d="M50 46H240V56H50z" />
      <circle className="part" cx="56" cy="51" r="8" />
      <path className="part" d="M150 56h16v12h-16zM228 16h10v32h-10z" />
      <Arm from={56} to={158} y={92} letter="c" />
      <Arm from={56} to={233} y={12} letter="d" />
    </>
  ),
  hammerArms: (
    <>
      <path className="wood" d="M60 40H250V46H60z" />
      <circle className="part" cx="66" cy="43" r="8" />
      <circle className="part" cx="92" cy="53" r="7" />
      <path className="part" d="M240 46h16v-34h-16zM242 12q6 -12 12 0z" />
      <Arm from={66} to={92} y={84} letter="r" />
      <Arm from={66} to={248} y={100} letter="L" />
    </>
  ),
};

/** A small side view of how a quantity is taken; nothing for those that words serve better. */
export function HelpDrawing({ quantity }: { readonly quantity: QuantityName }) {
  const say = useSay();
  const drawn = drawingOf[quantity];
  if (drawn === undefined) return null;
  return (
    <svg className="drawing" viewBox="0 0 314 108" role="img" aria-label={say(`shell.drawing.${drawn}`)}>
      {drawings[drawn]}
    </svg>
  );
}
