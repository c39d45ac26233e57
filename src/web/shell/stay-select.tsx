import { useNavigate } from '@tanstack/react-router';
import { useSay } from '../language/use-say.ts';

/** Which stay in the shop is looked at, once there is more than one. */
export function StaySelect({ cycles, cycle }: { readonly cycles: number; readonly cycle: number }) {
  const say = useSay();
  const navigate = useNavigate();
  const choose = (wanted: number): void => {
    void navigate({ to: '.', search: wanted === cycles ? {} : { cycle: wanted } });
  };
  return (
    <label className="stay">
      <span>{say('shell.stay')}</span>
      <select className="select" value={cycle} onChange={(event) => { choose(Number(event.target.value)); }}>
        {Array.from({ length: cycles }, (_, index) => index + 1).map((number) => (
          <option key={number} value={number}>
            {say(number === cycles ? 'shell.stay.current' : 'shell.stay.earlier', { cycle: number })}
          </option>
        ))}
      </select>
    </label>
  );
}
