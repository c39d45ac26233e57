import { printInks } from './print-inks.ts';
import type { Mark, Scene, SymbolMark, TextMark } from './scene.ts';
import { inkingOf, shorten, symbolPathOf } from './symbol.ts';
import { type Ink, paintOf, tokenOf } from './theme.ts';

/** `tokens`: CSS variables, for a page. `print`: inks on white paper and a named font, for a document. */
export type Theme = 'tokens' | 'print';

type Attributes = Readonly<Record<string, string | number | undefined>>;
type InkOf = (ink: Ink) => string;

/** Draws a scene as an SVG document. Coordinates are shortened to a hundredth of a pixel; text is escaped. */
export function svgOf(scene: Scene, theme: Theme, fontFamily = theme === 'print' ? 'Source Sans 3' : 'inherit'): string {
  const inkOf: InkOf = theme === 'print' ? (ink) => printInks[ink] : (ink) => `var(${tokenOf(ink)})`;
  const { widthPx, heightPx, title, description } = scene;
  const head = openTag('svg', {
    xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${String(widthPx)} ${String(heightPx)}`,
    width: widthPx, height: heightPx, role: 'img', 'aria-label': `${title}. ${description}`, 'font-family': fontFamily,
  });
  const body = scene.marks.map((mark) => drawMark(mark, inkOf));
  return [`${head}>`, `<title>${escapeXml(title)}</title>`, `<desc>${escapeXml(description)}</desc>`, ...body, '</svg>', ''].join('\n');
}

function drawMark(mark: Mark, inkOf: InkOf): string {
  const { type } = mark;
  switch (type) {
    case 'rect': return tag('rect', { x: mark.x, y: mark.y, width: mark.width, height: mark.height, ...paint(mark, inkOf) });
    case 'line': return tag('line', { x1: mark.x1, y1: mark.y1, x2: mark.x2, y2: mark.y2, ...paint(mark, inkOf) });
    case 'path': return tag('path', { d: mark.d, ...paint(mark, inkOf) });
    case 'symbol': return tag('path', { d: symbolPathOf(mark), ...symbolPaint(mark, inkOf) });
    case 'text': return drawText(mark, inkOf);
  }
}

function drawText({ x, y, text, anchor, sizePx, role }: TextMark, inkOf: InkOf): string {
  const open = openTag('text', { x, y, 'text-anchor': anchor === 'start' ? undefined : anchor, 'font-size': sizePx, fill: inkOf(paintOf[role].fill ?? 'ink') });
  return `${open}>${escapeXml(text)}</text>`;
}

function paint(mark: Mark, inkOf: InkOf): Attributes {
  const { fill, stroke, strokeWidth, dash, opacity } = paintOf[mark.role];
  const isLine = mark.type === 'line' || (mark.type === 'path' && !mark.filled);
  const isConnector = mark.type === 'path' && !mark.filled;
  return {
    fill: fill === undefined || isLine ? 'none' : inkOf(fill),
    stroke: stroke === undefined || (mark.type === 'path' && mark.filled) ? undefined : inkOf(stroke),
    'stroke-width': isConnector ? (strokeWidth ?? 1) * 0.6 : strokeWidth,
    'stroke-dasharray': dash,
    opacity,
  };
}

function symbolPaint({ shape, role }: SymbolMark, inkOf: InkOf): Attributes {
  const { fill = 'ink', stroke = 'ink', strokeWidth } = paintOf[role];
  const inking = inkingOf(shape);
  const inside = inking === 'stroke' ? 'none' : inkOf(inking === 'full' ? fill : 'paper');
  return { fill: inside, stroke: inkOf(stroke), 'stroke-width': strokeWidth, 'stroke-linecap': inking === 'stroke' ? 'round' : undefined };
}

function tag(name: string, attributes: Attributes): string {
  return `${openTag(name, attributes)}/>`;
}

function openTag(name: string, attributes: Attributes): string {
  const written = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${escapeXml(String(typeof value === 'number' ? shorten(value) : value))}"`],
  );
  return `<${name}${written.join('')}`;
}

/** Escapes text for XML content and attributes; control characters XML forbids are left out. */
function escapeXml(text: string): string {
  return text.replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/gu, '').replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
