import type { KeyNumber } from '#instrument';
import { type KeySign, inkingOf, signShape, symbolPathOf } from '#plot';
import { useSay } from '../language/use-say.ts';

/** The signs that stand on the keys shown, in words, with how many keys carry each. */
export function SignLegend({ signs }: { readonly signs: ReadonlyMap<KeyNumber, KeySign> }) {
  const say = useSay();
  const counts = new Map<KeySign, number>();
  for (const sign of signs.values()) counts.set(sign, (counts.get(sign) ?? 0) + 1);
  const present = (Object.keys(signShape) as KeySign[]).filter((sign) => counts.has(sign));
  return (
    <ul className="sign-legend">
      {present.map((sign) => (
        <li key={sign}>
          <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
            <path d={symbolPathOf({ shape: signShape[sign], x: 7, y: 7, radiusPx: 4.5 })} fill={inkingOf(signShape[sign]) === 'full' ? 'var(--ink)' : 'none'} stroke="var(--ink)" strokeWidth="1.5" />
          </svg>
          {say(`shell.key.${sign}`)} <span className="soft">{counts.get(sign)}</span>
        </li>
      ))}
    </ul>
  );
}
