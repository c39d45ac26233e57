import { type PointerEvent, memo } from 'react';
import { useSay } from '../../language/use-say.ts';

interface NumberPadProps {
  /** The reader's decimal sign. */
  readonly decimal: string;
  /** True where two figures can be typed at once. */
  readonly pair: boolean;
  readonly onText: (text: string) => void;
  readonly onErase: () => void;
  readonly onClear: () => void;
  readonly onEnter: () => void;
}

/** Keys large enough for a hand that holds weights. They leave the focus where the figures are typed. */
export const NumberPad = memo(function NumberPad({ decimal, pair, onText, onErase, onClear, onEnter }: NumberPadProps) {
  const say = useSay();
  const keepFocus = (event: PointerEvent): void => { event.preventDefault(); };
  const digit = (text: string) => <button key={text} type="button" className="pad-key" onPointerDown={keepFocus} onClick={() => { onText(text); }}>{text}</button>;
  return (
    <div className="pad" role="group" aria-label={say('readings.walk.pad')}>
      {['7', '8', '9'].map(digit)}
      <button type="button" className="pad-key pad-side" onPointerDown={keepFocus} onClick={onErase} aria-label={say('readings.walk.erase')}>⌫</button>
      {['4', '5', '6'].map(digit)}
      {pair
        ? <button type="button" className="pad-key pad-side" onPointerDown={keepFocus} onClick={() => { onText('/'); }} aria-label={say('readings.walk.slash')}>/</button>
        : <button type="button" className="pad-key pad-side" onPointerDown={keepFocus} onClick={() => { onText('-'); }} aria-label={say('readings.walk.minus')}>−</button>}
      {['1', '2', '3'].map(digit)}
      <button type="button" className="pad-key pad-enter" onPointerDown={keepFocus} onClick={onEnter}>{say('readings.walk.enter')}</button>
      {digit('0')}
      {digit(decimal)}
      <button type="button" className="pad-key pad-side" onPointerDown={keepFocus} onClick={onClear}>{say('readings.walk.clear')}</button>
    </div>
  );
});
