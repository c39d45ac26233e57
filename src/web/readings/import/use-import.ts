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

/** An import as far as it got. It outlives its dialog, so that closing that loses no choice made. */
export interface Importing {
  readonly step: ImportStep;
  readonly trouble: unknown;
  /** Session the weights of the file belong to; null for not stated, undefined while it is open. */
  readonly fileSession: string | null | undefined;
  readonly setFileSession: (session: string | null | undefined) => void;
  readonly pick: (file: File) => Promise<void>;
  readonly change: (source: ImportSource) => Promise<void>;
  readonly run: (source: ImportSource) => Promise<void>;
  readonly again: () => void;
}

/** An import from the picked file to the written event; the preview is asked anew whenever a column is mapped otherwise. */
export function useImport(): Importing {
  const locale = useLocale();
  const { id, cycle } = usePiano();
  const { state } = useDesk();
  const [fileSession, setFileSession] = useState<string | null>();
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
      await look({ fileName: file.name, contentBase64, cycle, state, locale });
    },
    [cycle, locale, look, state],
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
        const answer = await call('runImport', { params: { id }, body: { ...source, sessionId: fileSession ?? null } });
        if (answer.seq !== null) acknowledgedSeq(id, answer.seq);
        await refreshPiano(id);
        setStep({ at: 'done', answer });
        setFileSession(undefined);
      } catch (failure) {
        setTrouble(failure);
        setStep((now) => (now.at === 'preview' ? { ...now, busy: false } : now));
      }
    },
    [id, fileSession],
  );
  const again = useCallback((): void => {
    setStep({ at: 'pick' });
    setTrouble(null);
    setFileSession(undefined);
  }, []);
  return { step, trouble, fileSession, setFileSession, pick, change, run, again };
}
