import type { WeighingSession } from '#instrument';
import { useDays, useFigures, useSay } from '../../language/use-say.ts';

const decimalsOf = (value: number): number => (Number.isInteger(value) ? 0 : (String(value).split('.')[1]?.length ?? 0));

type Part = readonly [name: string, words: string | null];

/** Everything a session may state, in words; null where it does not. */
function usePartsOf(session: WeighingSession): readonly Part[] {
  const say = useSay();
  const figure = useFigures();
  const day = useDays();
  const print = (value: number, unit: 'g' | 'mm' | 'degC' | 'pct'): string => figure(value, decimalsOf(value), unit);
  const { weighedOn, placeOnKeyMm, stepG, rule, dampers, helperSprings, regulated, repeatabilityG, weightClass, temperatureC, humidityPct, equipment, repeats } = session;
  return [
    [say('readings.session.weighedOn'), weighedOn === null ? null : day(weighedOn)],
    [say('readings.session.placeOnKeyMm'), placeOnKeyMm === null ? null : say('readings.session.summary.place', { place: print(placeOnKeyMm, 'mm') })],
    [say('readings.session.stepG'), stepG === null ? null : say('readings.session.summary.step', { step: print(stepG, 'g') })],
    [say('readings.session.weightClass'), weightClass === null ? null : say('readings.session.summary.class', { name: weightClass })],
    [say('readings.session.repeatabilityG'), repeatabilityG === null ? null : say('readings.session.summary.repeatability', { figure: print(repeatabilityG, 'g') })],
    [say('readings.session.rule'), rule === null ? null : say(`readings.session.rule.${rule}`)],
    [say('readings.session.dampers'), dampers === null ? null : say('readings.session.summary.dampers', { how: dampers })],
    [say('readings.session.helperSprings'), helperSprings === null ? null : say('readings.session.summary.springs', { how: helperSprings })],
    [say('readings.session.regulated'), regulated === null ? null : say('readings.session.summary.regulated', { yes: String(regulated) })],
    [say('readings.session.repeats'), say('readings.session.summary.repeats', { count: repeats })],
    [say('readings.session.temperatureC'), temperatureC === null ? null : print(temperatureC, 'degC')],
    [say('readings.session.humidityPct'), humidityPct === null ? null : print(humidityPct, 'pct')],
    [say('readings.session.equipment'), equipment],
  ];
}

/** A session in one line: the step, and how much was left open. */
export function SessionLine({ session }: { readonly session: WeighingSession }) {
  const say = useSay();
  const parts = usePartsOf(session);
  const open = parts.filter(([, words]) => words === null).length;
  const step = parts.find(([name]) => name === say('readings.session.stepG'))?.[1] ?? undefined;
  return <>{[step, open === 0 ? undefined : say('readings.session.open', { count: open })].filter((text) => text !== undefined).join(' · ')}</>;
}

/** How a session was weighed, one thing beside the other; what was not stated says so. */
export function SessionSummary({ session }: { readonly session: WeighingSession }) {
  const say = useSay();
  const parts = usePartsOf(session);
  const { remark } = session;
  const stated = parts.filter(([, words]) => words !== null);
  const open = parts.filter(([, words]) => words === null);
  return (
    <ul className="session-summary">
      {stated.map(([name, words]) => <li key={name}>{words}</li>)}
      {open.length > 0 && (
        <li className="soft">
          {say('readings.session.notStated')}: {open.map(([name]) => name).join(', ')}
        </li>
      )}
      {remark !== '' && <li className="session-remark">{remark}</li>}
    </ul>
  );
}
