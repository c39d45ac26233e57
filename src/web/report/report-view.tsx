import type { Block, Cell, ReportDocument, TableBlock } from '#report';
import { SceneView } from '../leaves/scene-view.tsx';
import { StateMark } from '../leaves/state-mark.tsx';
import { Note } from '../ui/note.tsx';
import './report.css';

/** A report on screen: the same blocks as on paper, without its pages. */
export function ReportView({ report }: { readonly report: ReportDocument }) {
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
              <strong>{item.value}</strong>
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

function CellText({ cell: { text, tone } }: { readonly cell: Cell }) {
  if (tone === 'strong') return <strong>{text}</strong>;
  if (tone === 'plain') return text;
  return <span className={tone === 'quiet' ? 'soft' : 'flagged'}>{text}</span>;
}
