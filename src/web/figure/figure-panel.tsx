import { operationByName } from '#catalogue';
import { runOperation } from '#operation';
import { ok } from '#result';
import { sourceOf } from '#sources';
import { useState } from 'react';
import { sayMaybe, useLocale, useSay } from '../language/use-say.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { FieldRows } from './field-rows.tsx';
import { type FigureStory, originsOf } from './figure-store.ts';
import { IssueList } from '../shell/issue-list.tsx';
import './figure-panel.css';

/** How a figure was made: what went in and from which readings, the formula, what came out, the sources, and the same on the command line. */
export default function FigurePanel({ story, onClose }: { readonly story: FigureStory; readonly onClose: () => void }) {
  const say = useSay();
  const operation = operationByName(story.operation);
  if (operation === undefined) throw new Error(`no operation ${story.operation}`);
  const result = story.kept === undefined ? runOperation<unknown, unknown>(operation, story.input) : ok(story.kept);
  return (
    <AppDialog title={story.title} isOpen onClose={onClose} form="side">
      <p className="soft">{sayMaybe(say, `operation.${operation.name}.help`)}</p>
      <section>
        <h3>{say('shell.figure.in')}</h3>
        <FieldRows fields={story.input} origins={originsOf(story)} />
      </section>
      <section>
        <h3>{say('shell.figure.formula')}</h3>
        <div className="formula">
          {operation.formula.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </section>
      <section>
        <h3>{say('shell.figure.out')}</h3>
        {result.ok ? <FieldRows fields={result.value as Readonly<Record<string, unknown>>} strong={story.output} /> : <IssueList issues={result.issues} />}
      </section>
      <section>
        <h3>{say('shell.figure.sources')}</h3>
        <ul className="plain-list">
          {operation.sources.map((key) => {
            const source = sourceOf(key);
            return (
              <li key={key}>
                {source.title} <span className="soft small">({say(`shell.figure.access.${source.access}`)})</span>
              </li>
            );
          })}
        </ul>
      </section>
      <CommandLine name={operation.name} input={story.input} />
    </AppDialog>
  );
}

/** The same calculation for a script, ready to be copied. */
function CommandLine({ name, input }: { readonly name: string; readonly input: object }) {
  const say = useSay();
  const locale = useLocale();
  const [copied, setCopied] = useState(false);
  const line = `echo '${JSON.stringify(input).replaceAll("'", String.raw`'\''`)}' | wrestplank calc ${name} --json`;
  return (
    <section lang={locale}>
      <h3>{say('shell.figure.command')}</h3>
      <pre className="command-line">
        <code>{line}</code>
      </pre>
      <button type="button" className="button" onClick={() => void navigator.clipboard.writeText(line).then(() => { setCopied(true); })}>
        {say(copied ? 'shell.copied' : 'shell.copy')}
      </button>
    </section>
  );
}
