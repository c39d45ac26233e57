import { currencyOf, formatMoney, parseMoney } from '#money';
import { useLocale, useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';

interface MoneyFieldProps {
  readonly label: string;
  readonly value: string;
  readonly currency: string;
  readonly onChange: (typed: string) => void;
  readonly error?: string | undefined;
  readonly hint?: string | undefined;
}

/** Money as typed, with what was understood of it said back. */
export function MoneyField({ currency: code, value, hint, ...rest }: MoneyFieldProps) {
  const say = useSay();
  const locale = useLocale();
  const currency = currencyOf(code);
  const read = currency === undefined || value.trim() === '' ? undefined : parseMoney(value, { currency, locale });
  const echo = read?.ok === true ? say('worth.echo', { value: formatMoney(read.value, locale) }) : undefined;
  return <Field {...rest} value={value} inputMode="decimal" hint={hint} echo={echo} />;
}
