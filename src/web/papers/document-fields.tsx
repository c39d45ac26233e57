import { useId, useState } from 'react';
import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { Note } from '../ui/note.tsx';
import type { FormPart } from './fields-dialog.tsx';
import type { MaterialForm } from './material-form.ts';

/** The SHA-256 of a file, taken on this device. */
async function hashOf(file: File): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Documents kept elsewhere, each by its name and the hash of its bytes. */
export function DocumentFields({ typed, change, errorOf }: FormPart<MaterialForm>) {
  const say = useSay();
  const id = useId();
  const [failed, setFailed] = useState('');
  const add = (document: MaterialForm['documents'][number]): void => { change((now) => ({ ...now, documents: [...now.documents, document] })); };
  const set = (index: number, part: Partial<MaterialForm['documents'][number]>): void => { change((now) => ({ ...now, documents: now.documents.map((one, at) => (at === index ? { ...one, ...part } : one)) })); };
  const take = (file: File | undefined): void => {
    if (file === undefined) return;
    setFailed('');
    // Without a secure context the browser takes no hash; then it is typed.
    Promise.resolve().then(() => hashOf(file)).then((sha256) => { add({ name: file.name.slice(0, 200), sha256 }); }, () => { setFailed(file.name); add({ name: file.name.slice(0, 200), sha256: '' }); });
  };
  return (
    <fieldset className="papers-group">
      <legend>{say('papers.field.documents')}</legend>
      <p className="soft small">{say('papers.documents.about')}</p>
      {typed.documents.map((document, index) => {
        const number = index + 1;
        return (
          <div className="fields" key={index}>
            <Field label={say('papers.documents.name', { number })} value={document.name} maxLength={200} error={errorOf(`documents[${String(index)}].name`)} onChange={(name) => { set(index, { name }); }} />
            <Field label={say('papers.documents.hash', { number })} value={document.sha256} maxLength={64} error={errorOf(`documents[${String(index)}].sha256`)} onChange={(sha256) => { set(index, { sha256: sha256.trim().toLowerCase() }); }} />
            <div><button type="button" className="button button-quiet" onClick={() => { change((now) => ({ ...now, documents: now.documents.filter((_, at) => at !== index) })); }}>{say('papers.documents.drop', { number })}</button></div>
          </div>
        );
      })}
      {failed !== '' && <Note tone="warn" role="alert"><p>{say('papers.documents.failed', { name: failed })}</p></Note>}
      {typed.documents.length < 20 && (
        <div className="row">
          <label className="button photo-picker" htmlFor={id}>
            {say('papers.documents.choose')}
            <input id={id} className="visually-hidden" type="file" onChange={(event) => { const [file] = event.target.files ?? []; take(file); event.target.value = ''; }} />
          </label>
          <button type="button" className="button" onClick={() => { add({ name: '', sha256: '' }); }}>{say('papers.documents.add')}</button>
        </div>
      )}
    </fieldset>
  );
}
