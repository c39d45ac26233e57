import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { healthQuery } from '../api/queries.ts';
import { KeyList } from '../commands/key-list.tsx';
import { useFigures, useSay } from '../language/use-say.ts';
import { WhoFields } from '../people/who-fields.tsx';
import { ProblemNote } from '../shell/problem-note.tsx';
import { chooseLanguage } from '../language/choose-language.ts';
import { type Preferences, setPreferences, usePreferences } from '../theme/preferences.ts';
import TaxYearPanel from '../stock-book/tax-year-panel.tsx';
import { Choice } from '../ui/choice.tsx';
import RatesPanel from '../worth/rates-panel.tsx';
import './settings.css';

/** What this device shows and how, where the data lies, the keyboard. */
export function SettingsPage() {
  const say = useSay();
  const figure = useFigures();
  const { language, theme, contrast } = usePreferences();
  const [wanted, setWanted] = useState<Preferences['language']>();
  return (
    <section className="page settings">
      <h1>{say('shell.nav.settings')}</h1>
      <section className="panel" aria-labelledby="settings-who">
        <h2 id="settings-who">{say('people.title')}</h2>
        <WhoFields />
      </section>
      <RatesPanel />
      <TaxYearPanel />
      <section className="panel" aria-labelledby="settings-look">
        <h2 id="settings-look">{say('settings.look')}</h2>
        <p className="soft">{say('settings.look.device')}</p>
        <Choice<Preferences['language']>
          label={say('settings.language')}
          value={wanted ?? language}
          options={[{ value: 'en', label: <span lang="en">{say('settings.language.en')}</span> }, { value: 'de', label: <span lang="de">{say('settings.language.de')}</span> }]}
          onChange={(value) => {
            setWanted(value);
            void chooseLanguage(value).finally(() => { setWanted(undefined); });
          }}
          hint={say('settings.language.hint', { figure: figure(49.5, 1, 'g') })}
        />
        <Choice<Preferences['theme']>
          label={say('settings.theme')}
          value={theme}
          options={(['system', 'light', 'dark'] as const).map((value) => ({ value, label: say(`settings.theme.${value}`) }))}
          onChange={(value) => { setPreferences({ theme: value }); }}
        />
        <Choice<Preferences['contrast']>
          label={say('settings.contrast')}
          value={contrast}
          options={(['system', 'usual', 'more'] as const).map((value) => ({ value, label: say(`settings.contrast.${value}`) }))}
          onChange={(value) => { setPreferences({ contrast: value }); }}
        />
      </section>
      <section className="panel" aria-labelledby="settings-data">
        <h2 id="settings-data">{say('settings.data')}</h2>
        <DataFacts />
      </section>
      <section className="panel" aria-labelledby="settings-keys">
        <h2 id="settings-keys">{say('command.keys')}</h2>
        <KeyList />
        <p className="soft">{say('settings.keys.hint')}</p>
      </section>
      <section className="panel" aria-labelledby="settings-about">
        <h2 id="settings-about">{say('settings.about')}</h2>
        <p>{say('settings.about.text')}</p>
        <p>
          <a href="/api/docs">{say('settings.about.reference')}</a>
        </p>
      </section>
    </section>
  );
}

/** Which program answers, and in what kind of store it keeps its data. */
function DataFacts() {
  const say = useSay();
  const { data, error, refetch } = useQuery(healthQuery);
  if (error !== null) return <ProblemNote problem={error} onRetry={() => void refetch()} />;
  if (data === undefined) return <p className="soft">{say('shell.loading')}</p>;
  return (
    <>
      <p>{say(data.store === 'embedded' ? 'settings.data.embedded' : 'settings.data.server')}</p>
      <p className="soft">{say('settings.data.version', { version: data.version })}</p>
    </>
  );
}
