import { useQuery } from '@tanstack/react-query';
import { type AirHours, type CareOf, careOf, lastTunedOn, usualPlan } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { dayHere } from '../ui/day-here.ts';
import { climateQuery } from './care-queries.ts';

/** What the care page works with. */
export interface Care {
  readonly plan: CareOf<'plan'> | undefined;
  /** The plan that stands, else the usual one. */
  readonly asked: Pick<CareOf<'plan'>, 'lowPct' | 'highPct' | 'dayChangePct'>;
  readonly start: { readonly plan: Pick<CareOf<'plan'>, 'visitsFirstYear' | 'visitsLater'>; readonly strungOn: string | null; readonly lastTunedOn: string | null; readonly today: string };
}

/** The plan of care of this piano with the days it is counted from, by the day of this device. */
export function useCare(): Care {
  const { file: { care }, tuning, passes } = usePiano();
  const plan = careOf(care, 'plan').at(-1);
  const asked = plan ?? usualPlan;
  return { plan, asked, start: { plan: asked, strungOn: plan?.strungOn ?? tuning?.strungOn ?? null, lastTunedOn: plan?.lastTunedOn ?? lastTunedOn(passes), today: dayHere() } };
}

/** The log of the air; undefined while it is on its way. */
export function useAir(): { readonly air: AirHours | undefined; readonly error: Error | null; readonly refetch: () => void } {
  const { id } = usePiano();
  const { data, error, refetch } = useQuery(climateQuery(id));
  return { air: data, error, refetch: () => void refetch() };
}
