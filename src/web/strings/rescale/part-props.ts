import type { RescaleDraft } from './rescale-draft.ts';

/** What every part of the form is given. */
export interface PartProps {
  readonly draft: RescaleDraft;
  readonly onChange: (part: Partial<RescaleDraft>) => void;
  readonly errorOf: (path: keyof RescaleDraft) => string | undefined;
}
