import { useSay } from '../language/use-say.ts';
import { type Command, isAvailable, useAllCommands } from './registry.ts';
import { shortcutText } from './shortcuts.ts';
import './commands.css';

/** Shortcuts by group, read off the registry. */
export function KeyList() {
  const say = useSay();
  const commands = useAllCommands().filter((command) => command.shortcut !== undefined && isAvailable(command));
  const groups = [...new Set(commands.map(({ group }) => group))].map((group): readonly [Command['group'], readonly Command[]] => [group, commands.filter((command) => command.group === group)]);
  return (
    <div className="key-list">
      {groups.map(([group, ofGroup]) => (
        <section key={group}>
          <h3>{say(group)}</h3>
          <dl>
            {ofGroup.map(({ id, label, values, shortcut = '' }) => (
              <div key={id}>
                <dt>{say(label, values)}</dt>
                <dd>
                  <kbd>{shortcutText(shortcut, say('command.ctrl'))}</kbd>
                </dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </div>
  );
}
