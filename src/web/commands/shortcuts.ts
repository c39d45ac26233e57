import { type Command, allCommands, isAvailable } from './registry.ts';

const isMac = /mac|iphone|ipad/iu.test(navigator.platform);
let firstKey = '';
let firstKeyAt = 0;

/** `mod+k` of a key event; the shift of a character that needs it is part of the character. */
function strokeOf(event: KeyboardEvent): string {
  const mod = isMac ? event.metaKey : event.ctrlKey;
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const shift = event.shiftKey && (event.key.length > 1 || /[a-z]/iu.test(event.key));
  return [mod ? 'mod' : '', event.altKey ? 'alt' : '', shift ? 'shift' : '', key].filter((part) => part !== '').join('+');
}

/** True where a stroke belongs to the text being typed. A field may hand undo over with `data-app-undo`. */
function isTyping(event: KeyboardEvent, stroke: string): boolean {
  const target = event.target;
  if (!(target instanceof HTMLElement)) return false;
  if (!target.matches('input:not([type="checkbox"], [type="radio"]), textarea, select, [contenteditable="true"]')) return false;
  if (stroke === 'mod+z') return target.closest('[data-app-undo]') === null;
  return !stroke.startsWith('mod+') && !/^F\d/u.test(stroke);
}

function commandFor(stroke: string, at: number): Command | undefined {
  const sequence = at - firstKeyAt < 1500 && firstKey !== '' ? `${firstKey} ${stroke}` : stroke;
  const match = (wanted: string) => allCommands().find((command) => command.shortcut === wanted && isAvailable(command));
  return match(sequence) ?? match(stroke);
}

/** Listens for the shortcuts of all registered commands; answers how to stop. */
export function listenForShortcuts(root: Document): () => void {
  const onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.isComposing) return;
    const stroke = strokeOf(event);
    if (isTyping(event, stroke)) return;
    if (root.querySelector('[role="dialog"], [role="alertdialog"]') !== null && stroke !== 'mod+k') return;
    const command = commandFor(stroke, event.timeStamp);
    firstKey = command === undefined ? stroke : '';
    firstKeyAt = event.timeStamp;
    if (command === undefined) return;
    event.preventDefault();
    command.perform();
  };
  root.addEventListener('keydown', onKey);
  return () => {
    root.removeEventListener('keydown', onKey);
  };
}

/** The shortcut as printed on the keys: `Ctrl K`, `⌘ K`. */
export function shortcutText(shortcut: string, ctrl: string): string {
  const word: Readonly<Record<string, string>> = { mod: isMac ? '⌘' : ctrl, alt: isMac ? '⌥' : 'Alt', shift: '⇧' };
  return shortcut
    .split(' ')
    .map((stroke) => stroke.split('+').map((part) => word[part] ?? (part.length === 1 ? part.toUpperCase() : part)).join(' '))
    .join(', ');
}
