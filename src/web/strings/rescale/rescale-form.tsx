import type { Issue } from '#result';
import type { ScaleAnalysis } from '#strings';
import { explainIssue } from '#text';
import type { ReactNode } from 'react';
import { useLocale, useSay } from '../../language/use-say.ts';
import { LimitFields } from './limit-fields.tsx';
import { LockFields } from './lock-fields.tsx';
import { type RescaleDraft, TRADE_STEPS } from './rescale-draft.ts';
import { StockFields } from './stock-fields.tsx';
import { WeightFields } from './weight-fields.tsx';

/** What every part of the form is given. */
export interface PartProps {
  readonly draft: RescaleDraft;
  readonly onChange: (part: Partial<RescaleDraft>) => void;
  readonly errorOf: (path: keyof RescaleDraft) => string | undefined;
}

interface RescaleFormProps {
  readonly draft: RescaleDraft;
  readonly standing: ScaleAnalysis;
  readonly issues: readonly Issue[];
  readonly isRunning: boolean;
  readonly onChange: (draft: RescaleDraft) => void;
  readonly onRun: () => void;
  readonly onTrade: () => void;
  /** How the reckoning stands. */
  readonly children: ReactNode;
}

/** What there is to string with, what is kept, what must hold, and what matters how much. */
export function RescaleForm({ draft, standing, issues, isRunning, onChange, onRun, onTrade, children }: RescaleFormProps) {
  const say = useSay();
  const locale = useLocale();
  const part: PartProps = {
    draft,
    onChange: (changed) => { onChange({ ...draft, ...changed }); },
    errorOf: (path) => {
      const issue = issues.find((one) => one.path === path);
      return issue === undefined ? undefined : explainIssue(say, issue, locale);
    },
  };
  return (
    <form className="panel rescale-form" aria-labelledby="rescale-title" onSubmit={(event) => { event.preventDefault(); onRun(); }}>
      <h2 id="rescale-title">{say('rescale.title')}</h2>
      <p>{say('rescale.about')}</p>
      <p className="soft small">{say('rescale.onWhat')}</p>
      <StockFields {...part} />
      <LockFields {...part} standing={standing} />
      <LimitFields {...part} />
      <WeightFields {...part} />
      <div className="row">
        <button type="submit" className="button button-main" disabled={isRunning}>{say('rescale.run')}</button>
        <button type="button" className="button" disabled={isRunning} onClick={onTrade}>{say('rescale.runTrade', { count: TRADE_STEPS })}</button>
      </div>
      {children}
    </form>
  );
}
