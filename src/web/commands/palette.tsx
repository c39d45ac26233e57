import { useEffect, useRef, useState } from 'react';
import { Autocomplete, useFilter } from 'react-aria-components/Autocomplete';
import { Input } from 'react-aria-components/Input';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { SearchField } from 'react-aria-components/SearchField';
import { useSay } from '../language/use-say.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { isAvailable, useAllCommands } from './registry.ts';
import { shortcutText } from './shortcuts.ts';
import './commands.css';

/** What belongs to the page comes first, what holds everywhere last. */
const LAST: readonly string[] = ['command.group.everywhere', 'command.group.look'];

/** Every command by name: type a few letters, walk with the arrows, Enter. */
export default function Palette({ onClose }: { readonly onClose: () => void }) {
  const say = useSay();
  const { contains } = useFilter({ sensitivity: 'base' });
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  useEffect(() => {
    input.current?.focus();
  }, []);
  const commands = useAllCommands()
    .filter((command) => command.id !== 'palette' && isAvailable(command))
    .sort((a, b) => LAST.indexOf(a.group) - LAST.indexOf(b.group));
  const perform = (id: string): void => {
    onClose();
    // After the dialog has given the focus back, so that a command may move it on.
    setTimeout(() => commands.find((command) => command.id === id)?.perform(), 0);
  };
  return (
    <AppDialog title={say('command.palette')} isOpen onClose={onClose}>
      <Autocomplete filter={contains} inputValue={text} onInputChange={setText}>
        <SearchField className="palette-search" aria-label={say('command.search')}>
          <Input ref={input} className="input" placeholder={say('command.search')} />
        </SearchField>
        <ListBox
          className="palette-list"
          aria-label={say('command.palette')}
          selectionMode="none"
          onAction={(id) => { perform(String(id)); }}
          renderEmptyState={() => <p className="soft palette-none">{say('command.none')}</p>}
        >
          {commands.map(({ id, label, values, group, shortcut }) => (
            <ListBoxItem key={id} id={id} className="palette-item" textValue={`${say(label, values)} ${say(group)}`}>
              <span>
                {say(label, values)} <span className="soft small">{say(group)}</span>
              </span>
              {shortcut !== undefined && <kbd>{shortcutText(shortcut, say('command.ctrl'))}</kbd>}
            </ListBoxItem>
          ))}
        </ListBox>
      </Autocomplete>
    </AppDialog>
  );
}
