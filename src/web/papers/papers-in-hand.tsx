import type { Photo } from '#instrument';
import { languageOf } from '#text';
import { andThen, ok } from '#result';
import type { HeldPaper, Shipment } from '#workshop';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { PhotoPick } from '../belly/observations/photo-pick.tsx';
import { PhotoStrip } from '../belly/observations/photo-strip.tsx';
import { useDays, useLocale, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import type { CardField } from '../shop/card-fields.ts';
import { fieldsStated, fieldsTyped } from '../shop/card-form.ts';
import { changeCard } from '../shop/shop-writing.ts';
import { FieldsDialog, type FieldsForm } from './fields-dialog.tsx';

interface PapersInHandProps {
  readonly shipment: Shipment;
  /** Papers the rules of the day ask for. */
  readonly asked: readonly { readonly en: string; readonly de: string }[];
}

/** The papers a shipment asks for, each to be ticked once it is in hand, with its number, day and photos; and those held that nobody asks for any more. */
export function PapersInHand({ shipment, asked }: PapersInHandProps) {
  const say = useSay();
  const locale = useLocale();
  const [open, setOpen] = useState<HeldPaper>();
  // What was ticked is shown at once, and what is kept as soon as it is.
  const [wanted, want] = useState<readonly HeldPaper[]>();
  const held = wanted ?? shipment.inHand ?? [];
  const writing = useMutation({ mutationFn: (inHand: HeldPaper[]) => changeCard(shipment.id, { kind: 'shipment', inHand }) });
  const put = (paper: string, now: HeldPaper | undefined): Promise<unknown> => {
    const next = [...held.filter((one) => one.paper !== paper), ...(now === undefined ? [] : [now])];
    want(next);
    return writing.mutateAsync(next).finally(() => { want(undefined); });
  };
  const tick = (paper: string, isHeld: boolean): void => { put(paper, isHeld ? { paper, number: '', on: null, photos: [] } : undefined).catch(() => undefined); };
  const unasked = held.filter(({ paper }) => !asked.some(({ en }) => en === paper)).map(({ paper }) => ({ en: paper, de: paper }));
  if (asked.length + unasked.length === 0) return null;
  return (
    <>
      <h4>{say('papers.shipment.toHave')}</h4>
      <ul className="papers-in-hand">
        {[...asked, ...unasked].map((words) => {
          const own = held.find(({ paper }) => paper === words.en);
          const name = words[languageOf(locale)];
          return (
            <li key={words.en}>
              <label><input type="checkbox" checked={own !== undefined} disabled={writing.isPending} onChange={(event) => { tick(words.en, event.target.checked); }} />{name}</label>
              {own !== undefined && <HeldLine held={own} name={name} onOpen={() => { setOpen(own); }} />}
            </li>
          );
        })}
      </ul>
      {writing.error !== null && <ProblemNote problem={writing.error} />}
      {open !== undefined && <HeldDialog key={open.paper} shipment={shipment} held={open} onKeep={(now) => put(open.paper, now)} onClose={() => { setOpen(undefined); }} />}
    </>
  );
}

/** Number, day and photos of a paper in hand, as far as they are stated. */
function HeldLine({ held: { number, on, photos }, name, onOpen }: { readonly held: HeldPaper; readonly name: string; readonly onOpen: () => void }) {
  const say = useSay();
  const day = useDays();
  const stated = [number, on === null ? '' : day(on)].filter((part) => part !== '').join(', ');
  return (
    <div className="row">
      <span className={stated === '' ? 'soft' : undefined}>{stated === '' ? say('papers.hand.unstated') : stated}</span>
      <button type="button" className="button button-quiet no-print" aria-label={say('papers.hand.stateOf', { what: name })} onClick={onOpen}>{say('papers.hand.state')}</button>
      <PhotoStrip photos={photos} />
    </div>
  );
}

const area = 'papers.hand.field';
const fields: readonly CardField[] = [{ path: 'number', as: 'line', maxLength: 120, isOptional: true, area }, { path: 'on', as: 'day', isOptional: true, area }];

interface HeldForm extends FieldsForm {
  readonly photos: readonly Photo[];
}

function HeldDialog({ shipment, held, onKeep, onClose }: { readonly shipment: Shipment; readonly held: HeldPaper; readonly onKeep: (now: HeldPaper) => Promise<unknown>; readonly onClose: () => void }) {
  const say = useSay();
  const locale = useLocale();
  return (
    <FieldsDialog<HeldForm, HeldPaper>
      title={say('papers.hand.title')} name={`papers.hand.${shipment.id}.${held.paper}`} fields={fields} base={() => ({ fields: fieldsTyped(fields, held, locale), photos: held.photos })}
      stated={({ fields: typed, photos }) => andThen(fieldsStated(fields, typed, locale), ({ number, on }) => ok({ paper: held.paper, number: typeof number === 'string' ? number : '', on: typeof on === 'string' ? on : null, photos: [...photos] }))}
      keep={onKeep} onClose={onClose}
      more={(part) => (
        <PhotoPick
          photos={part.typed.photos}
          onAdd={(photo: Photo) => { part.change((now) => ({ ...now, photos: [...now.photos.filter(({ hash }) => hash !== photo.hash), photo] })); }}
          onRemove={({ hash }: Photo) => { part.change((now) => ({ ...now, photos: now.photos.filter((one) => one.hash !== hash) })); }}
        />
      )}
    />
  );
}
