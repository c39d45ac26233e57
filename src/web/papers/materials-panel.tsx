import { type PaperMaterial, allIvoryOf, isIvory, massOf } from '#workshop';
import { useState } from 'react';
import { PhotoStrip } from '../belly/observations/photo-strip.tsx';
import { OpenFigure } from '../figure/figure.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { MaterialDialog } from './material-dialog.tsx';
import { allIvoryStory, massStory } from './papers-stories.ts';
import { useWithdrawing } from './use-papers.ts';

const COLUMNS = ['where', 'species', 'mass', 'evidence'] as const;

/** The materials of the instrument that some law asks about, each with what shows it. */
export function MaterialsPanel({ materials }: { readonly materials: readonly PaperMaterial[] }) {
  const say = useSay();
  const [open, setOpen] = useState<{ readonly material?: PaperMaterial }>();
  const withdrawing = useWithdrawing();
  const ivories = materials.filter(isIvory);
  const all = ivories.length > 1 ? allIvoryOf(ivories) : undefined;
  const allStory = allIvoryStory(ivories, say);
  return (
    <section className="panel" aria-labelledby="papers-materials">
      <div className="row row-between">
        <h2 id="papers-materials">{say('papers.materials')}</h2>
        <button type="button" className="button no-print" onClick={() => { setOpen({}); }}>{say('papers.materials.add')}</button>
      </div>
      {materials.length === 0 ? <p>{say('papers.materials.none')}</p> : (
        <ScrollTable label={say('report.papers.materials')} corner={say('papers.column.material')} columns={[...COLUMNS.map((name) => ({ key: name, head: say(`papers.column.${name}`) })), { key: 'do', head: <span className="visually-hidden">{say('papers.correct')}</span> }]}>
          {materials.map((material) => <MaterialRow key={material.id} material={material} onCorrect={() => { setOpen({ material }); }} onWithdraw={() => { withdrawing.mutate(material); }} />)}
        </ScrollTable>
      )}
      {all !== undefined && allStory !== undefined && <p>{say('papers.mass.allIvory')}: <OpenFigure story={() => allStory}><MassWords mass={all} /></OpenFigure></p>}
      {ivories.some((one) => massOf(one) !== undefined) && <p className="soft small">{say('papers.mass.doubt')}{ivories.some((one) => one.massG !== null && one.massUncertaintyG === null) && ` ${say('papers.mass.needsDoubt')}`}</p>}
      {withdrawing.error !== null && <ProblemNote problem={withdrawing.error} />}
      {open !== undefined && <MaterialDialog key={open.material?.id ?? 'new'} material={open.material} onClose={() => { setOpen(undefined); }} />}
    </section>
  );
}

function MaterialRow({ material, onCorrect, onWithdraw }: { readonly material: PaperMaterial; readonly onCorrect: () => void; readonly onWithdraw: () => void }) {
  const say = useSay();
  const { where, species, evidence, judgedBy, photos, documents } = material;
  const name = say(`papers.material.${material.material}`);
  const mass = massOf(material);
  const story = massStory(material, say);
  const shown = mass === undefined ? say('papers.mass.none') : <MassWords mass={mass} />;
  const counts = [photos.length === 0 ? '' : say('papers.evidence.photos', { count: photos.length }), documents.length === 0 ? '' : say('papers.evidence.documents', { count: documents.length }), judgedBy === '' ? '' : say('papers.evidence.judged', { who: judgedBy })].filter((one) => one !== '').join(' · ');
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{where}</td>
      <td>{species === 'doubtful' && <span aria-hidden="true">? </span>}{say(`papers.species.${species}`)}</td>
      <td>{story === undefined ? shown : <OpenFigure story={() => story}>{shown}</OpenFigure>}</td>
      <td className="papers-evidence">
        {evidence === '' && counts === '' ? say('papers.evidence.none') : evidence}
        {counts !== '' && <div className="soft small">{counts}</div>}
        {documents.map(({ name: title, sha256 }) => <div key={sha256} className="soft small">{title}: <code title={sha256}>{sha256.slice(0, 12)}…</code></div>)}
        <PhotoStrip photos={photos} />
      </td>
      <td>
        <span className="row no-print">
          <button type="button" className="button" aria-label={say('papers.materials.edit', { what: `${name}, ${where}` })} onClick={onCorrect}>{say('papers.correct')}</button>
          <button type="button" className="button button-quiet" aria-label={say('papers.materials.withdraw', { what: `${name}, ${where}` })} onClick={onWithdraw}>{say('papers.withdraw')}</button>
        </span>
      </td>
    </tr>
  );
}

function MassWords({ mass: { massG, uncertaintyG, how } }: { readonly mass: NonNullable<ReturnType<typeof massOf>> }) {
  const say = useSay();
  const figure = useFigures();
  const known = say(`papers.massHow.${how}`);
  return uncertaintyG === undefined ? say('papers.mass.of', { mass: figure(massG, 1, 'g'), how: known }) : say('papers.mass.ofDoubt', { mass: figure(massG, 1, 'g'), doubt: figure(uncertaintyG, 1, 'g'), how: known });
}
