import type { Photo } from '#instrument';
import type { PaperMaterial } from '#workshop';
import { usePiano } from '../api/piano.tsx';
import { PhotoPick } from '../belly/observations/photo-pick.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { DocumentFields } from './document-fields.tsx';
import { FieldsDialog } from './fields-dialog.tsx';
import { materialDraftOf, materialFields, materialFormOf } from './material-form.ts';
import { PieceFields } from './piece-fields.tsx';
import { keepPaper } from './use-papers.ts';

/** A material of the instrument: what, where, how sure, how much, and what shows it. */
export function MaterialDialog({ material, onClose }: { readonly material: PaperMaterial | undefined; readonly onClose: () => void }) {
  const say = useSay();
  const locale = useLocale();
  const { id } = usePiano();
  return (
    <FieldsDialog
      title={say('papers.materials.add')} name={`papers.material.${material?.id ?? id}`} fields={materialFields}
      base={() => materialFormOf(material, locale)} stated={(form) => materialDraftOf(form, locale)} keep={(draft) => keepPaper(id, draft, material)} onClose={onClose}
      more={(part) => (
        <>
          <PieceFields {...part} />
          <fieldset className="papers-group">
            <legend>{say('papers.field.photos')}</legend>
            <PhotoPick
              photos={part.typed.photos}
              onAdd={(photo: Photo) => { part.change((now) => ({ ...now, photos: [...now.photos.filter(({ hash }) => hash !== photo.hash), photo] })); }}
              onRemove={({ hash }: Photo) => { part.change((now) => ({ ...now, photos: now.photos.filter((one) => one.hash !== hash) })); }}
            />
          </fieldset>
          <DocumentFields {...part} />
        </>
      )}
    />
  );
}
