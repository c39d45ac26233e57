import { sayMinutes } from '#workshop';
import { useLocale, useSay } from '../../language/use-say.ts';

/** Says minutes as hours and minutes. */
export function useSayTime(): (minutes: number) => string {
  const say = useSay();
  const locale = useLocale();
  return (minutes) => sayMinutes(minutes, { say, locale });
}
