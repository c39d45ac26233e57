import { colourOf, noteNameOf, outcomes } from '#instrument';
import { type KeyboardEvent, useCallback, useEffect, useMemo, useRef } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { useDesk } from '../desk.tsx';
import { wholeNumber } from '../grid/grid-block.ts';
import { NumberPad } from './number-pad.tsx';
import { RemarkField, standingRemark } from './remark-field.tsx';
import { useWalk } from './use-walk.ts';
import { WalkDone } from './walk-done.tsx';
import { WalkEcho, WalkOthers } from './walk-echo.tsx';
import { WalkKeyboard } from './walk-keyboard.tsx';
import { keyAt } from './walk-machine.ts';
import { WalkMessage } from './walk-message.tsx';
import { WalkSetup } from './walk-setup.tsx';
import { WalkSlots } from './walk-slots.tsx';
import { isWedgeTab } from './wedge.ts';
import './walk.css';

/** One key a screen: the figures of a hand that holds weights, typed, tapped or sent by a scale. */
export function WalkView({ onGrid }: { readonly onGrid: () => void }) {
  const say = useSay();
  const locale = useLocale();
  const { id, compass, cycle } = usePiano();
  const { state: of } = useDesk();
  const walk = useWalk();
  const { state, plan, context, send, done } = walk;
  const key = keyAt(state, plan);
  const input = useRef<HTMLInputElement>(null);
  const strokes = useRef<readonly number[]>([]);
  const decimal = useMemo(() => wholeNumber(1.5, locale).slice(1, 2), [locale]);
  const draft = useRef(state.draft);
  draft.current = state.draft;

  const isStopped = state.problem !== null || state.warnings.length > 0;
  const isAsked = key !== undefined;
  useEffect(() => {
    input.current?.focus({ preventScroll: true });
  }, [key, isAsked]);

  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    const walkEnd = section.current?.querySelector('.pad')?.getBoundingClientRect().bottom ?? 0;
    if (walkEnd <= window.innerHeight) return;
    const asking = document.querySelector('.session-bar:has(.session-ask)');
    (asking ?? section.current)?.scrollIntoView({ block: 'start' });
  }, []);

  const type = useCallback((text: string) => { send({ type: 'typed', draft: draft.current + text }); }, [send]);
  const erase = useCallback(() => { send({ type: 'typed', draft: draft.current.slice(0, -1) }); }, [send]);
  const clear = useCallback(() => { send({ type: 'clear' }); }, [send]);
  const enter = useCallback(() => { send({ type: 'enter' }); }, [send]);
  /** After a press beside the figure, the next stroke is a figure again: an Enter must not press the same button twice. */
  const press = (event: Parameters<typeof send>[0]): void => {
    send(event);
    input.current?.focus({ preventScroll: true });
  };
  const goTo = useCallback((to: number) => { send({ type: 'goTo', key: to }); }, [send]);
  const isDone = useCallback((at: number) => plan.slots.every((slot) => context.standing(at, slot) !== undefined), [plan, context]);

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    const { key: stroke, timeStamp } = event;
    if (event.nativeEvent.isComposing) return;
    if (stroke.length === 1) strokes.current = [...strokes.current.slice(-7), timeStamp];
    const byScale = stroke === 'Tab' && state.draft !== '' && isWedgeTab(strokes.current, timeStamp);
    const told = stroke === 'Enter' || byScale ? 'enter' : stroke === 'Escape' ? 'clear' : stroke === 'PageUp' ? 'back' : stroke === 'PageDown' ? 'skip' : undefined;
    if (told === undefined) return;
    event.preventDefault();
    send({ type: told });
  };
  /** Digits struck anywhere in the walk belong to the figure. */
  const onStray = (event: KeyboardEvent<HTMLElement>): void => {
    if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement || event.target instanceof HTMLSelectElement) return;
    if (!event.ctrlKey && !event.metaKey && !event.altKey && /^[\d.,/-]$/u.test(event.key)) input.current?.focus();
  };

  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- only hands digits on to the field
    <section ref={section} className="walk" aria-label={say('readings.mode.walk')} onKeyDown={onStray}>
      <WalkSetup choice={walk.choice} onChoose={walk.choose} />
      <WalkKeyboard keys={plan.keys} isDone={isDone} current={key} onKey={goTo} />
      <div className="walk-progress">
        <progress value={done} max={plan.keys.length} aria-label={say('readings.walk.progress', { done, all: plan.keys.length })} />
        <span>{say('readings.walk.progress', { done, all: plan.keys.length })}</span>
      </div>
      {key === undefined ? (
        <WalkDone walk={walk} onGrid={onGrid} />
      ) : (
        <div className="walk-desk">
          <div className="walk-main">
            <div className="walk-head">
              <h3 className="walk-note">{noteNameOf(compass, key)}</h3>
              <p className="soft">{say('readings.walk.key', { key, colour: colourOf(compass, key) })}</p>
              <WalkOthers at={key} plan={plan} />
            </div>
            <WalkSlots state={state} context={context} onAsk={(slot) => { press({ type: 'ask', slot }); }} />
            <input
              ref={input}
              className="walk-input"
              type="text"
              inputMode="none"
              autoComplete="off"
              spellCheck={false}
              aria-label={say('readings.walk.asked', { quantity: say(`quantity.${plan.slots[state.slot]?.quantity ?? 'downWeightG'}.name`), note: noteNameOf(compass, key) })}
              aria-describedby="walk-told"
              aria-invalid={state.problem !== null || undefined}
              value={state.draft}
              onChange={(event) => { send({ type: 'typed', draft: event.target.value }); }}
              onKeyDown={onKeyDown}
            />
            <div id="walk-told" className="walk-told">
              <WalkMessage state={state} />
              {!isStopped && (
                <>
                  <p className="soft small">{plan.slots.length > 1 ? say('readings.walk.hint', { pair: '49/26' }) : say('readings.walk.hintOne')}</p>
                  <WalkEcho echo={state.echo} />
                </>
              )}
            </div>
          </div>
          <NumberPad decimal={decimal} pair={plan.slots.length > 1} onText={type} onErase={erase} onClear={clear} onEnter={enter} />
          <div className="walk-move">
            <button type="button" className="pad-key" disabled={state.at === 0} onClick={() => { press({ type: 'back' }); }}>{say('readings.walk.back')}</button>
            <button type="button" className="pad-key" onClick={() => { press({ type: 'skip' }); }}>{say('readings.walk.skip')}</button>
          </div>
          <fieldset className="choice walk-outcomes">
            <legend>{say('readings.walk.outcomes')}</legend>
            <div className="choice-row">
              {outcomes.map((outcome) => <button key={outcome} type="button" className="pad-key" onClick={() => { press({ type: 'outcome', outcome }); }}>{say(`readings.walk.outcome.${outcome}`)}</button>)}
            </div>
          </fieldset>
          <RemarkField key={key} name={`remark.${id}.${String(cycle)}.${of}.${String(key)}`} kept={state.remark} standing={standingRemark(context, key)} onRemark={(remark) => { send({ type: 'remark', remark }); }} />
        </div>
      )}
    </section>
  );
}
