import { usePiano } from '../api/piano.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { decimalsFor } from '../story/say-event.ts';

/** What is asked of the bearing, in one line, and the way to state or change it. */
export function BearingTermsLine({ onChange }: { readonly onChange: () => void }) {
  const say = useSay();
  const figure = useFigures();
  const { scale, isCurrent } = usePiano();
  const [target, tolerance] = [scale?.bearingTargetDeg ?? null, scale?.bearingToleranceDeg ?? null];
  const degrees = (value: number): string => figure(value, decimalsFor(value, 1), 'deg');
  const asked = target === null ? say('belly.terms.nothing') : tolerance === null ? say('belly.terms.target', { target: degrees(target) }) : say('belly.terms.band', { target: degrees(target), tolerance: degrees(tolerance) });
  const heights = scale?.heightUncertaintyMm ?? null;
  return (
    <div className="row row-between terms-line">
      <p>
        <strong>{asked}</strong>
        {heights !== null && ` · ${say('belly.terms.heights', { uncertainty: figure(heights, decimalsFor(heights, 2), 'mm') })}`}
        {scale?.boardStiffnessNPerMm != null && ` · ${say('belly.terms.board', { stiffness: figure(scale.boardStiffnessNPerMm, 0) })}`}
      </p>
      {isCurrent && <button type="button" className="button no-print" onClick={onChange}>{say('strings.terms.change')}</button>}
    </div>
  );
}
