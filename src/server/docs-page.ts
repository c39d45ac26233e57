import type { FieldRow } from '#operation';
import type { Say } from '#text';
import { sourceOf } from '#sources';
import { html } from 'hono/html';
import { type OperationReference, type Reference, fieldCells } from './reference.ts';

type Html = ReturnType<typeof html>;

/** The reference as one readable page, with nothing fetched from elsewhere. */
export function docsPage(reference: Reference, say: Say, language: string, css: string): Html {
  return html`<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${say('route.docsTitle')}</title>
<style>${css}</style>
</head>
<body>
<header><h1>${say('route.docsTitle')}</h1><p>${say('route.api')} <a href="/api/openapi.json">OpenAPI 3.1</a></p>
<nav aria-label="${say('route.contents')}"><a href="#calculations">${say('route.calculations')}</a> <a href="#routes">${say('route.routes')}</a> <a href="#problems">${say('route.problems')}</a></nav></header>
<main>
<section id="calculations"><h2>${say('route.calculations')}</h2><p>${say('route.calc')}</p>${reference.operations.map((operation) => operationSection(operation, say))}</section>
<section id="routes"><h2>${say('route.routes')}</h2>${table([say('route.method'), say('route.path'), say('route.says')], reference.routes.map(({ method, path, says }) => [code(method), code(path), says]), say('route.routes'))}</section>
<section id="problems"><h2>${say('route.problems')}</h2><p>${say('route.problem')}</p>${reference.problems.map(({ kind, status, title }) => html`<p id="problem-${kind}">${code(kind)} ${status} — ${title}</p>`)}</section>
</main>
</body>
</html>`;
}

function operationSection({ name, title, help, formula, sources, example, input, output }: OperationReference, say: Say): Html {
  return html`<article id="calc-${name}">
<h3>${code(name)} ${title}</h3>
<p>${help}</p>
<p>${formula.map((line) => html`${code(line)}<br>`)}</p>
<h4>${say('route.input')}</h4>${fieldTable(input, 'input', say, `${name}: ${say('route.input')}`)}
<h4>${say('route.output')}</h4>${fieldTable(output, 'output', say, `${name}: ${say('route.output')}`)}
<p>${say('route.example')}</p><pre tabindex="0">curl -s -H 'content-type: application/json' -d '${JSON.stringify(example)}' http://127.0.0.1:4949/api/calc/${name}</pre>
<p>${say('route.sources')} ${sources.map((key) => `${sourceOf(key).title} [${key}]`).join('; ')}</p>
</article>`;
}

function fieldTable(rows: readonly FieldRow[], side: 'input' | 'output', say: Say, label: string): Html {
  const { heads, cells } = fieldCells(rows, side, say);
  return table(heads, cells.map(([name = '', ...rest]) => [code(name), ...rest]), label);
}

function table(heads: readonly string[], rows: readonly (readonly (string | Html)[])[], label: string): Html {
  return html`<div class="scroll" role="region" aria-label="${label}" tabindex="0"><table><thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>${rows.map((cells) => html`<tr>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody></table></div>`;
}

function code(text: string): Html {
  return html`<code>${text}</code>`;
}
