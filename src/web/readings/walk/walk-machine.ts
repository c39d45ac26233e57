import { type KeyNumber, type Outcome, understandFigure } from '#instrument';
import { splitFigures } from './walk-input.ts';
import type { StandingFigure, WalkContext, WalkEvent, WalkPlan, WalkSlot, WalkState, WalkStep, WalkWarning, WalkWrite } from './walk-state.ts';

/** With these nothing more can be weighed at the key: they hold for every figure still open there. */
const ENDS_THE_KEY: ReadonlySet<Outcome> = new Set(['sticks', 'missing', 'unweighable']);

/** The slots of one key: every quantity in turn, once for each repeat. */
export function slotsOf(quantities: readonly WalkSlot['quantity'][], repeats: number): readonly WalkSlot[] {
  return Array.from({ length: Math.max(1, repeats) }, (_, round) => quantities.map((quantity) => ({ quantity, repeat: round + 1 }))).flat();
}

/** A walk at its first key. */
export function startWalk(context: WalkContext): WalkState {
  return arriveAt(0, { at: 0, slot: 0, draft: '', warnedDraft: null, warnings: [], problem: null, echo: null, remark: '' }, context);
}

/** The key asked for, or undefined when the walk is done. */
export function keyAt(state: WalkState, plan: WalkPlan): KeyNumber | undefined {
  return plan.keys[state.at];
}

/** How many keys of the plan have every figure asked for. */
export function keysDone({ plan, standing }: WalkContext): number {
  return plan.keys.filter((key) => plan.slots.every((slot) => standing(key, slot) !== undefined)).length;
}

/** Carries a walk over to another plan: the same key where it still comes up, else the next one above it that does; the draft in any case. */
export function changePlan(state: WalkState, before: WalkPlan, context: WalkContext): WalkState {
  const key = before.keys[state.at];
  const { keys } = context.plan;
  const same = key === undefined ? -1 : keys.indexOf(key);
  const next = same >= 0 || key === undefined ? same : keys.findIndex((other) => other > key);
  return { ...arriveAt(Math.max(0, next), state, context), draft: state.draft, remark: state.remark };
}

/**
 * The walk's only step. What was typed either comes back in `writes`, or stays in the draft with a problem or a warning beside it;
 * only `clear` and retyping drop it.
 */
export function walkStep(state: WalkState, event: WalkEvent, context: WalkContext): WalkStep {
  switch (event.type) {
    case 'typed':
      return stay({ ...calm(state), draft: event.draft });
    case 'clear':
      return stay({ ...calm(state), draft: '' });
    case 'remark':
      return addRemark(state, event.remark, context);
    case 'ask':
      return keeping(state, context, (kept) => ({ ...kept, slot: event.slot }), true);
    case 'enter':
      return state.draft.trim() === '' ? leave(state, context, () => nextOpen(state, context)) : take(state, context);
    case 'outcome':
      return takeOutcome(state, event.outcome, context);
    case 'skip':
      return keeping(state, context, () => arriveAt(Math.min(state.at + 1, context.plan.keys.length), state, context));
    case 'back':
      return keeping(state, context, () => arriveAt(Math.max(0, state.at - 1), state, context));
    case 'goTo': {
      const at = context.plan.keys.indexOf(event.key);
      return at < 0 ? stay(state) : keeping(state, context, () => arriveAt(at, state, context));
    }
  }
}

const stay = (state: WalkState): WalkStep => ({ state, writes: [] });
const calm = (state: WalkState): WalkState => ({ ...state, warnedDraft: null, warnings: [], problem: null });

/** The state on reaching a key: its first open figure is asked for, or the first of all when none is open. */
function arriveAt(at: number, state: WalkState, { plan, standing }: WalkContext): WalkState {
  const key = plan.keys[at];
  const open = key === undefined ? -1 : plan.slots.findIndex((slot) => standing(key, slot) === undefined);
  return { ...calm(state), at, slot: Math.max(0, open), draft: '', remark: '' };
}

function nextOpen(state: WalkState, context: WalkContext): WalkState {
  return state.slot + 1 < context.plan.slots.length ? { ...calm(state), slot: state.slot + 1 } : arriveAt(state.at + 1, state, context);
}

/** Leaves the key by `move`, unless a remark would be left behind without a reading. */
function leave(state: WalkState, context: WalkContext, move: () => WalkState): WalkStep {
  const after = move();
  if (after.at === state.at) return stay({ ...after, remark: state.remark });
  if (state.remark !== '') return stay({ ...calm(state), problem: { code: 'remarkNeedsReading' } });
  return stay(keyAt(state, context.plan) === undefined && after.at > state.at ? state : after);
}

/** Keeps a draft first, as Enter would, then moves. A draft that is refused or warned of stays, and so does the walk: an unlikely figure is kept by Enter alone. */
function keeping(state: WalkState, context: WalkContext, move: (kept: WalkState) => WalkState, sameKey = false): WalkStep {
  if (state.draft.trim() === '') return sameKey ? stay(move(calm(state))) : leave(state, context, () => move(state));
  const taken = take({ ...state, warnedDraft: null }, context);
  if (taken.writes.length === 0) return taken;
  const moved = sameKey && taken.state.at === state.at ? move(taken.state) : sameKey ? taken.state : move(taken.state);
  return { state: { ...moved, echo: taken.state.echo }, writes: taken.writes };
}

interface Aim {
  readonly first: number;
  readonly parts: readonly string[];
}

/** Where the typed figures go: from the slot asked for, or over a whole round when a round was typed in its middle. */
function aimOf(state: WalkState, plan: WalkPlan): Aim | undefined {
  const parts = splitFigures(state.draft);
  if (parts.length <= plan.slots.length - state.slot) return { first: state.slot, parts };
  const round = plan.slots.filter(({ repeat }) => repeat === plan.slots[state.slot]?.repeat).length;
  return parts.length <= round ? { first: plan.slots.length - round, parts } : undefined;
}

/** Understands the draft: refused and warned of it stays, otherwise it is written and the walk goes on. */
function take(state: WalkState, context: WalkContext): WalkStep {
  const { plan } = context;
  const key = keyAt(state, plan);
  if (key === undefined) return stay({ ...calm(state), problem: { code: 'clearFirst', draft: state.draft } });
  const aim = aimOf(state, plan);
  if (aim === undefined) {
    return stay({ ...calm(state), problem: { code: 'tooMany', given: splitFigures(state.draft).length, allowed: plan.slots.length - state.slot } });
  }
  const writes: WalkWrite[] = [];
  const values: number[] = [];
  const warnings: WalkWarning[] = [];
  for (const [index, typed] of aim.parts.entries()) {
    const slot = plan.slots[aim.first + index];
    if (slot === undefined) return stay(state);
    const figure = understandFigure(slot.quantity, typed, { path: slot.quantity, locale: plan.locale });
    if (!figure.ok) {
      const [issue] = figure.issues;
      return issue === undefined ? stay(state) : stay({ ...calm(state), problem: { code: 'notUnderstood', slot, issue } });
    }
    if (figure.value.warning !== undefined) warnings.push({ code: 'unlikely', slot, issue: figure.value.warning });
    values.push(figure.value.value);
    writes.push({ key, slot, typed });
  }
  warnings.push(...upAboveDown(key, writes, values, context));
  if (warnings.length > 0 && state.warnedDraft !== state.draft) return stay({ ...calm(state), warnings, warnedDraft: state.draft });
  return advance(state, context, aim.first + writes.length, withRemark(writes, state.remark), values);
}

/** Compares up with down weight of the same repeat, typed now or standing. */
function upAboveDown(key: KeyNumber, writes: readonly WalkWrite[], values: readonly number[], { standing }: WalkContext): readonly WalkWarning[] {
  const repeats = new Set(writes.map(({ slot }) => slot.repeat));
  return [...repeats].flatMap((repeat): readonly WalkWarning[] => {
    const valueOf = (quantity: 'downWeightG' | 'upWeightG'): number | null | undefined => {
      const typed = writes.findIndex(({ slot }) => slot.quantity === quantity && slot.repeat === repeat);
      return typed >= 0 ? values[typed] : standing(key, { quantity, repeat })?.value;
    };
    const touched = writes.some(({ slot }) => slot.repeat === repeat && (slot.quantity === 'downWeightG' || slot.quantity === 'upWeightG'));
    const downG = valueOf('downWeightG') ?? null;
    const upG = valueOf('upWeightG') ?? null;
    return touched && downG !== null && upG !== null && upG > downG ? [{ code: 'upAboveDown', downG, upG }] : [];
  });
}

const withRemark = (writes: readonly WalkWrite[], remark: string): readonly WalkWrite[] =>
  remark === '' ? writes : writes.map((write, index) => (index === 0 ? { ...write, remark } : write));

/** Goes on to the slot after what was written, or to the next key. */
function advance(state: WalkState, context: WalkContext, slot: number, writes: readonly WalkWrite[], values: readonly (number | null)[]): WalkStep {
  const [first] = writes;
  const sameKey = state.echo !== null && first !== undefined && state.echo.key === first.key;
  const fresh = writes.map(({ slot: written, typed, outcome }, index) => ({ slot: written, typed: typed ?? null, value: values[index] ?? null, outcome: outcome ?? null }));
  const earlier = sameKey ? state.echo.figures.filter(({ slot: old }) => !fresh.some(({ slot: now }) => sameSlot(old, now))) : [];
  const echo = first === undefined ? state.echo : { key: first.key, figures: [...earlier, ...fresh] };
  const cleared: WalkState = { ...calm(state), draft: '', remark: '', echo };
  const written = withWritten(context, writes);
  const next = slot < context.plan.slots.length ? { ...cleared, slot } : arriveAt(state.at + 1, cleared, written);
  return { state: next, writes };
}

const sameSlot = (one: WalkSlot, other: WalkSlot): boolean => one.quantity === other.quantity && one.repeat === other.repeat;

/** The context as it is once the writes are kept. */
function withWritten(context: WalkContext, writes: readonly WalkWrite[]): WalkContext {
  return {
    ...context,
    standing: (key, slot): StandingFigure | undefined => {
      const write = writes.find((made) => made.key === key && sameSlot(made.slot, slot));
      return write === undefined ? context.standing(key, slot) : { value: null, outcome: write.outcome ?? null, typed: write.typed ?? null };
    },
  };
}

/** Notes an outcome instead of a figure; a draft before it is kept first, so `49` then "does not return" are down and up weight. */
function takeOutcome(state: WalkState, outcome: Outcome, context: WalkContext): WalkStep {
  if (state.draft.trim() === '') return noteOutcome(state, outcome, context);
  const aim = aimOf(state, context.plan);
  if (aim !== undefined && aim.first + aim.parts.length >= context.plan.slots.length) {
    return stay({ ...calm(state), problem: { code: 'clearFirst', draft: state.draft } });
  }
  const taken = take(state, context);
  if (taken.writes.length === 0) return taken;
  const noted = noteOutcome(taken.state, outcome, withWritten(context, taken.writes));
  return { state: noted.state, writes: [...taken.writes, ...noted.writes] };
}

function noteOutcome(state: WalkState, outcome: Outcome, context: WalkContext): WalkStep {
  const { plan, standing } = context;
  const key = keyAt(state, plan);
  if (key === undefined) return stay(state);
  const open = plan.slots.filter((slot, index) => index === state.slot || (index > state.slot && ENDS_THE_KEY.has(outcome) && standing(key, slot) === undefined));
  const writes = withRemark(open.map((slot) => ({ key, slot, outcome })), state.remark);
  const next = ENDS_THE_KEY.has(outcome) ? plan.slots.length : state.slot + 1;
  return advance(state, context, next, writes, []);
}

/** A remark joins the reading that stands at the figure asked for, or waits for the next one at this key. */
function addRemark(state: WalkState, remark: string, context: WalkContext): WalkStep {
  const key = keyAt(state, context.plan);
  if (key === undefined) return stay(state);
  const place = context.plan.slots.map((slot) => ({ slot, figure: context.standing(key, slot) })).find(({ figure }) => figure !== undefined);
  if (place?.figure === undefined || state.draft !== '') return stay({ ...calm(state), remark });
  const { typed, outcome } = place.figure;
  const figure = outcome !== null ? { outcome } : typed !== null ? { typed } : undefined;
  if (figure === undefined) return stay({ ...calm(state), remark });
  return { state: { ...calm(state), remark: '' }, writes: [{ key, slot: place.slot, ...figure, remark }] };
}
