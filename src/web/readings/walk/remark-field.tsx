import type { KeyNumber } from '#instrument';
import { useDraft } from '../../kept/draft.ts';
import { useSay } from '../../language/use-say.ts';
import { Field } from '../../ui/field.tsx';
import type { WalkContext } from './walk-state.ts';

/** The remark that stands at a key, on whichever of its figures. */
export function standingRemark({ plan, standing }: WalkContext, key: KeyNumber): string {
  return plan.slots.map((slot) => standing(key, slot)?.remark ?? '').find((remark) => remark !== '') ?? '';
}

interface RemarkFieldProps {
  /** Name under which a half-typed remark is kept on this device. */
  readonly name: string;
  /** Typed before and still waiting for a figure. */
  readonly kept: string;
  readonly standing: string;
  readonly onRemark: (remark: string) => void;
}

/** A remark on the key; taken when the field is left. */
export function RemarkField({ name, kept, standing, onRemark }: RemarkFieldProps) {
  const say = useSay();
  const { typed: { remark: typed }, change, drop } = useDraft(name, () => ({ remark: kept || standing }));
  return (
    <div className="walk-remark">
      <Field
        label={say('readings.walk.remark')}
        value={typed}
        maxLength={2000}
        echo={kept === '' ? undefined : say('readings.walk.remark.waiting')}
        onChange={(remark) => { change(() => ({ remark })); }}
        onBlur={() => {
          drop();
          if (typed.trim() !== (kept || standing)) onRemark(typed.trim());
        }}
      />
    </div>
  );
}
