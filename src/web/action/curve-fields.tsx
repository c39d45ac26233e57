import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import type { AnchorDraft } from './intent-draft.ts';

interface CurveFieldsProps {
  readonly anchors: readonly AnchorDraft[];
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: (anchors: readonly AnchorDraft[]) => void;
}

const MOST = 12;

/** Anchors of a down weight curve: a key and its weight each, straight lines between. */
export function CurveFields({ anchors, errorOf, onChange }: CurveFieldsProps) {
  const say = useSay();
  const change = (index: number, part: Partial<AnchorDraft>): void => {
    onChange(anchors.map((anchor, place) => (place === index ? { ...anchor, ...part } : anchor)));
  };
  return (
    <fieldset className="choice">
      <legend>{say('action.intent.anchors')}</legend>
      <ol className="anchors">
        {anchors.map((anchor, index) => (
          <li key={index} className="row">
            <Field width="9rem" label={say('action.intent.anchorKey')} required value={anchor.key} error={errorOf(`anchors[${String(index)}].key`)} onChange={(key) => { change(index, { key }); }} />
            <Field width="9rem" label={say('action.intent.anchorWeight')} required inputMode="decimal" value={anchor.weight} error={errorOf(`anchors[${String(index)}].weight`)} onChange={(weight) => { change(index, { weight }); }} />
            {anchors.length > 2 && (
              <button type="button" className="button button-quiet" onClick={() => { onChange(anchors.filter((_, place) => place !== index)); }}>
                {say('action.intent.anchorRemove')}
              </button>
            )}
          </li>
        ))}
      </ol>
      {anchors.length < MOST && (
        <button type="button" className="button" onClick={() => { onChange([...anchors, { key: '', weight: '' }]); }}>{say('action.intent.anchorAdd')}</button>
      )}
    </fieldset>
  );
}
