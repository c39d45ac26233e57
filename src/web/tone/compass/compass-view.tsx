import { useSay } from '../../language/use-say.ts';

/** The compass as it sounds: one plot a property, the states laid over each other. */
export function CompassView() {
  const say = useSay();
  return <p className="soft">{say('tone.none')}</p>;
}
