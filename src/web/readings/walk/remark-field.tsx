import type { KeyNumber } from '#instrument';
import { useState } from 'react';
import { useSay } from '../../language/use-say.ts';
import { Field } from '../../ui/field.tsx';
import type { WalkContext } from './walk-state.ts';

/** The remark that stands at a key, on whichever of its figures. */
export function standingRemark({ plan, standing }: WalkContext, key: KeyNumber): string {
  return plan.slots.map((slot) => standing(key, slot)?.remark ?? '').find((remark) => remark !== '') ?? '';
}

interface RemarkFieldProps {
  /** Typed before and still waiting for a figure. */
  readonly kept: string;
  readonly standing: string;
  readonly onRemark: (remark: string) => void;
}

/** A remark on the key; taken when the field is left. */
export function RemarkField({ kept, standing, onRemark }: RemarkFieldProps) {
  const say = useSay();
  const [typed, setTyped] = useState(kept || standing);
  return (
    <div className="walk-remark">
      <Field
        label={say('readings.walk.remark')}
        value={typed}
        maxLength={2000}
        echo={kept === '' ? undefined : say('readings.walk.remark.waiting')}
        onChange={setTyped}
        onBlur={() => {
          if (typed.trim() !== (kept || standing)) onRemark(typed.trim());
        }}
      />
    </div>
  );
}
