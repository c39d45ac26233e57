import type { Block, Cell, FigureName, ReportDocument, TableBlock } from '#report';
import { createContext, use } from 'react';
import type { FigureStory } from '../figure/figure-store.ts';
import { OpenFigure } from '../figure/figure.tsx';
import { SceneView } from '../leaves/scene-view.tsx';
import { StateMark } from '../leaves/state-mark.tsx';
import { Note } from '../ui/note.tsx';
import './report.css';

interface ReportViewProps {
  readonly report: ReportDocument;
  /** Tells how a named figure was made; undefined for one that cannot be opened. Without it all figures stay text. */
  readonly tellerOf?: TellerOf;
}

/** A report on screen: the same blocks as on paper, without its pages, and its derived figures open. */
export function ReportView({ report, tellerOf = () => undefined }: ReportViewProps) {
  return <Telling value={tellerOf}><Report report={report} /></Telling>;
}

/** The way from the name of a figure to how it was made; worked out when it is opened. */
export type TellerOf = (figure: FigureName) => (() => FigureStory) | undefined;

const Telling = createContext<TellerOf>(() => undefined);

function Report({ report }: { readonly report: ReportDocument }) {
  return (
    <article className="report" lang={report.language}>
      {report.demo && <p className="demo-tag">{report.furniture.demo}</p>}
      <header>
        <p className="report-title">{report.title}</p>
        <p className="soft">{report.subtitle}</p>
      </header>
      {report.blocks.map((block, index) => <BlockView key={`${String(index)} ${block.type}`} block={block} />)}
    </article>
  );
}

function BlockView({ block }: { readonly block: Block }) {
  switch (block.type) {
    case 'heading': {
      const Heading = (['h2', 'h3', 'h4'] as const)[block.level - 1] ?? 'h4';
      return <Heading>{block.text}</Heading>;
    }
    case 'paragraph':
      return <p className={`report-${block.size}`}>{block.text}</p>;
    case 'keyValues':
      return (
        <dl className="report-values">
          {block.rows.map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd><CellText cell={value} /></dd>
            </div>
          ))}
        </dl>
      );
    case 'headline':
      return (
        <div className="report-headline">
          {block.items.map((item) => (
            <div key={`${item.state} ${item.label}`}>
              <StateMark state={item.state} />
              <strong><Opening figure={item.opens}>{item.value}</Opening></strong>
              <span className="soft small">{item.detail}</span>
            </div>
          ))}
        </div>
      );
    case 'table':
      return <TableView table={block} />;
    case 'figure':
      return (
        <figure>
          <SceneView scene={{ ...block.scene, description: block.alt }} />
          <figcaption className="soft small">{block.caption}</figcaption>
        </figure>
      );
    case 'note':
      return <Note><p>{block.text}</p></Note>;
    case 'caution':
      return <Note tone="warn"><p>{block.text}</p></Note>;
    case 'list':
      return <ul>{block.items.map((item) => <li key={item}>{item}</li>)}</ul>;
    case 'pageBreak':
      return null;
  }
}

/** A table; one laid in several columns of rows on paper is laid so here, as far as there is room. */
function TableView({ table }: { readonly table: TableBlock }) {
  const { caption, rows, strips } = table;
  const length = Math.ceil(rows.length / strips);
  const parts = Array.from({ length: strips }, (_, index) => rows.slice(index * length, (index + 1) * length)).filter((part) => part.length > 0);
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard
    <div className="table-wrap" tabIndex={0} role="region" aria-label={caption}>
      <div className="report-strips">
        {parts.map((part, index) => <Strip key={index} table={{ ...table, rows: part }} />)}
      </div>
    </div>
  );
}

function Strip({ table: { caption, columns, rows, rowHeads } }: { readonly table: TableBlock }) {
  return (
    <table className="report-table">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>{columns.map(({ label, align }, index) => <th key={`${String(index)} ${label}`} scope="col" className={`at-${align}`}>{label}</th>)}</tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          <tr key={`${String(index)} ${row[0]?.text ?? ''}`}>
            {row.map((cell, place) => {
              const className = `at-${columns[place]?.align ?? 'start'}`;
              return place === 0 && rowHeads
                ? <th key={columns[place]?.label} scope="row" className={className}><CellText cell={cell} /></th>
                : <td key={`${String(place)} ${columns[place]?.label ?? ''}`} className={className}><CellText cell={cell} /></td>;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function CellText({ cell: { text, tone, opens } }: { readonly cell: Cell }) {
  const shown = <Opening figure={opens}>{text}</Opening>;
  if (tone === 'strong') return <strong>{shown}</strong>;
  if (tone === 'plain') return shown;
  return <span className={tone === 'quiet' ? 'soft' : 'flagged'}>{shown}</span>;
}

/** Text that opens to how it was made, where it names a figure somebody can tell of. */
function Opening({ figure, children }: { readonly figure: FigureName | undefined; readonly children: string }) {
  const tell = use(Telling);
  const told = figure === undefined ? undefined : tell(figure);
  if (told === undefined) return children;
  return <OpenFigure story={told}>{children}</OpenFigure>;
}
