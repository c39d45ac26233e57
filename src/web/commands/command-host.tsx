import { useNavigate } from '@tanstack/react-router';
import { Suspense, lazy, useMemo, useState } from 'react';
import { chooseLanguage } from '../language/choose-language.ts';
import { useSay } from '../language/use-say.ts';
import { setPreferences } from '../theme/preferences.ts';
import { type Command, useCommands } from './registry.ts';
import { shortcutText } from './shortcuts.ts';

const Palette = lazy(() => import('./palette.tsx'));
const KeysDialog = lazy(() => import('./keys-dialog.tsx'));

/** The commands that hold everywhere, and the button that opens them all. */
export function CommandHost() {
  const say = useSay();
  const navigate = useNavigate();
  const [open, setOpen] = useState<'palette' | 'keys' | undefined>();
  const commands = useMemo(
    (): readonly Command[] => [
      { id: 'palette', label: 'command.palette', group: 'command.group.everywhere', shortcut: 'mod+k', perform: () => { setOpen((now) => (now === 'palette' ? undefined : 'palette')); } },
      { id: 'keys', label: 'command.keys', group: 'command.group.everywhere', shortcut: '?', perform: () => { setOpen('keys'); } },
      { id: 'go.pianos', label: 'command.go.pianos', group: 'command.group.everywhere', shortcut: 'g i', perform: () => void navigate({ to: '/pianos' }) },
      { id: 'go.bench', label: 'command.go.bench', group: 'command.group.everywhere', shortcut: 'g h', perform: () => void navigate({ to: '/bench' }) },
      { id: 'go.people', label: 'command.go.people', group: 'command.group.everywhere', shortcut: 'g c', perform: () => void navigate({ to: '/people' }) },
      { id: 'go.parts', label: 'command.go.parts', group: 'command.group.everywhere', shortcut: 'g k', perform: () => void navigate({ to: '/parts' }) },
      { id: 'go.stockBook', label: 'command.go.stockBook', group: 'command.group.everywhere', shortcut: 'g v', perform: () => void navigate({ to: '/stock-book' }) },
      { id: 'go.settings', label: 'command.go.settings', group: 'command.group.everywhere', shortcut: 'g e', perform: () => void navigate({ to: '/settings' }) },
      { id: 'theme.light', label: 'command.theme.light', group: 'command.group.look', perform: () => { setPreferences({ theme: 'light' }); } },
      { id: 'theme.dark', label: 'command.theme.dark', group: 'command.group.look', perform: () => { setPreferences({ theme: 'dark' }); } },
      { id: 'theme.system', label: 'command.theme.system', group: 'command.group.look', perform: () => { setPreferences({ theme: 'system' }); } },
      { id: 'language.en', label: 'command.language.en', group: 'command.group.look', perform: () => void chooseLanguage('en') },
      { id: 'language.de', label: 'command.language.de', group: 'command.group.look', perform: () => void chooseLanguage('de') },
    ],
    [navigate],
  );
  useCommands(commands);
  const close = (): void => { setOpen(undefined); };
  return (
    <>
      <button type="button" className="button" onClick={() => { setOpen('palette'); }}>
        <svg className="command-sign" viewBox="0 0 16 16" aria-hidden="true">
          <path stroke="currentColor" strokeWidth="1.6" d="M2 3.5h12M2 8h12M2 12.5h8" />
        </svg>
        <span className="command-word">{say('command.palette')}</span> <kbd className="wide-only">{shortcutText('mod+k', say('command.ctrl'))}</kbd>
      </button>
      <Suspense fallback={null}>
        {open === 'palette' && <Palette onClose={close} />}
        {open === 'keys' && <KeysDialog onClose={close} />}
      </Suspense>
    </>
  );
}
