import { type Ink, type Mark, inkingOf, paintOf, symbolPathOf, tokenOf } from '#plot';
import { memo } from 'react';

const ink = (name: Ink | undefined): string => (name === undefined ? 'none' : `var(${tokenOf(name)})`);

/** Two marks that would draw the same, whoever made them. */
export function sameMarks(a: Mark, b: Mark | undefined): boolean {
  if (a === b) return true;
  if (b === undefined) return false;
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => a[name as keyof Mark] === b[name as keyof Mark]);
}

/** One mark of a drawing; drawn anew only when something of it changed. */
export const MarkView = memo(function MarkView({ mark }: { readonly mark: Mark }) {
  const { fill, stroke, strokeWidth, dash, opacity } = paintOf[mark.role];
  const line = { fill: 'none', stroke: ink(stroke), strokeWidth, strokeDasharray: dash, opacity };
  const area = { fill: ink(fill), stroke: ink(stroke), strokeWidth, strokeDasharray: dash, opacity };
  switch (mark.type) {
    case 'rect':
      return <rect x={mark.x} y={mark.y} width={mark.width} height={mark.height} {...area} />;
    case 'line':
      return <line x1={mark.x1} y1={mark.y1} x2={mark.x2} y2={mark.y2} {...line} />;
    case 'path':
      return <path d={mark.d} {...(mark.filled ? { ...area, stroke: 'none' } : { ...line, strokeWidth: (strokeWidth ?? 1) * 0.6 })} />;
    case 'text':
      return (
        <text x={mark.x} y={mark.y} textAnchor={mark.anchor} fontSize={mark.sizePx} fill={ink(fill ?? 'ink')}>
          {mark.text}
        </text>
      );
    case 'symbol': {
      const inking = inkingOf(mark.shape);
      const inside = inking === 'stroke' ? 'none' : ink(inking === 'full' ? fill : 'paper');
      return <path d={symbolPathOf(mark)} fill={inside} stroke={ink(stroke ?? 'ink')} strokeWidth={strokeWidth} strokeLinecap={inking === 'stroke' ? 'round' : undefined} />;
    }
  }
}, (one, other) => sameMarks(one.mark, other.mark));
