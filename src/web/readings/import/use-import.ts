import type { Answer, ImportPreview, ImportSource } from '#workshop';
import { useCallback, useState } from 'react';
import { call } from '../../api/client.ts';
import { usePiano } from '../../api/piano.tsx';
import { refreshPiano } from '../../api/queries.ts';
import { useLocale } from '../../language/use-say.ts';
import { acknowledgedSeq } from '../../undo/undo-stack.ts';
import { useDesk } from '../desk.tsx';
import { base64Of } from './file-content.ts';

/** Largest file taken, in megabytes. */
export const MAX_MB = 8;

export type ImportStep =
  | { readonly at: 'pick' }
  | { readonly at: 'reading'; readonly name: string }
  | { readonly at: 'preview'; readonly source: ImportSource; readonly preview: ImportPreview; readonly busy: boolean }
  | { readonly at: 'done'; readonly answer: Answer<'runImport'> };

/** An import from the picked file to the written event; the preview is asked anew whenever a column is mapped otherwise. */
export function useImport() {
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const { state, session } = useDesk();
  const [step, setStep] = useState<ImportStep>({ at: 'pick' });
  const [trouble, setTrouble] = useState<unknown>(null);

  const look = useCallback(
    async (source: ImportSource): Promise<void> => {
      setTrouble(null);
      try {
        const preview = await call('previewImport', { params: { id }, body: source });
        setStep({ at: 'preview', source, preview, busy: false });
      } catch (failure) {
        setTrouble(failure);
        setStep((now) => (now.at === 'preview' ? { ...now, busy: false } : { at: 'pick' }));
      }
    },
    [id],
  );
  const pick = useCallback(
    async (file: File): Promise<void> => {
      setStep({ at: 'reading', name: file.name });
      const contentBase64 = await base64Of(file);
      await look({ fileName: file.name, contentBase64, cycle, state, sessionId: session.current?.id ?? null, locale });
    },
    [cycle, locale, look, session, state],
  );
  const change = useCallback(
    async (source: ImportSource): Promise<void> => {
      setStep((now) => (now.at === 'preview' ? { ...now, source, busy: true } : now));
      await look(source);
    },
    [look],
  );
  const run = useCallback(
    async (source: ImportSource): Promise<void> => {
      setTrouble(null);
      setStep((now) => (now.at === 'preview' ? { ...now, busy: true } : now));
      try {
        const answer = await call('runImport', { params: { id }, body: source });
        if (answer.seq !== null) acknowledgedSeq(id, answer.seq);
        await refreshPiano(id);
        setStep({ at: 'done', answer });
      } catch (failure) {
        setTrouble(failure);
        setStep((now) => (now.at === 'preview' ? { ...now, busy: false } : now));
      }
    },
    [id],
  );
  const again = useCallback((): void => { setStep({ at: 'pick' }); }, []);
  return { step, trouble, pick, change, run, again };
}
