import { type LoggerPreview, type LoggerSource, loggerQuestions } from '#workshop';
import { useSay } from '../language/use-say.ts';
import { SelectField } from '../ui/select-field.tsx';

type Told = NonNullable<LoggerSource['reading']>;
interface Option { readonly value: string; readonly label: string }

const columnFields = ['dayColumn', 'timeColumn', 'humidityColumn', 'temperatureColumn'] as const;
const MAY_BE_NONE: readonly string[] = ['timeColumn', 'temperatureColumn'];

/** How a logger’s file is read, each point to be told otherwise; what the file does not say stands open. */
export function LoggerColumns({ preview: { columns, reading, asked }, onTell }: { readonly preview: LoggerPreview; readonly onTell: (part: Told) => void }) {
  const say = useSay();
  const open: Option = { value: '', label: say('care.logger.pick') };
  const named = columns.map(({ index, letter, header, sample }): Option => ({ value: String(index), label: say('care.logger.column', { letter, header, sample }) }));
  const choice = (name: 'dayOrder' | 'temperatureUnit' | 'decimalSign', options: readonly Option[]) => (
    <SelectField key={name} label={say(`care.logger.${name}`)} value={reading[name] ?? ''} options={reading[name] === undefined ? [open, ...options] : options} onChange={(value) => { if (value !== '') onTell({ [name]: value }); }} />
  );
  return (
    <>
      {asked.length > 0 && <p>{say('care.logger.asked')} <strong>{loggerQuestions.filter((name) => asked.includes(name)).map((name) => say(`care.logger.${name}`)).join(', ')}</strong></p>}
      <div className="fields">
        {columnFields.map((name) => {
          const value = reading[name];
          const none: readonly Option[] = MAY_BE_NONE.includes(name) ? [{ value: 'none', label: say('care.logger.noColumn') }] : value === undefined ? [open] : [];
          return <SelectField key={name} label={say(`care.logger.${name}`)} value={value === undefined ? '' : value === null ? 'none' : String(value)} options={[...none, ...named]} onChange={(chosen) => { if (chosen !== '') onTell({ [name]: chosen === 'none' ? null : Number(chosen) }); }} />;
        })}
        {choice('dayOrder', (['ymd', 'dmy', 'mdy'] as const).map((value) => ({ value, label: say(`care.logger.order.${value}`) })))}
        {choice('temperatureUnit', [{ value: 'C', label: '°C' }, { value: 'F', label: '°F' }])}
        {choice('decimalSign', [{ value: '.', label: say('care.logger.sign.point') }, { value: ',', label: say('care.logger.sign.comma') }])}
      </div>
    </>
  );
}
