import { useNavigate } from '@tanstack/react-router';
import { useMemo } from 'react';
import type { PianoFile } from '../api/queries.ts';
import { type Command, useCommands } from '../commands/registry.ts';
import { BOOKS, undoInShop } from '../shop/shop-undo.ts';
import { tellerOf } from '../undo/piano-undo.ts';
import { lastChain } from '../undo/undo-stack.ts';
import { undoLast } from '../undo/undo.ts';
import { type PianoPage, pianoPages } from './piano-pages.ts';

const goKeys: Readonly<Record<PianoPage, string>> = { story: 'g s', readings: 'g r', strings: 'g t', belly: 'g b', action: 'g a', tone: 'g o', work: 'g w', worth: 'g m', room: 'g n', papers: 'g d', care: 'g u', proof: 'g p' };

/** The commands that hold on every page of a piano. */
export function PianoCommands({ file }: { readonly file: PianoFile }) {
  const navigate = useNavigate();
  const commands = useMemo((): readonly Command[] => {
    const { id } = file.instrument;
    const params = { pianoId: id };
    const goes = pianoPages.map((page): Command => ({
      id: `go.${page}`, label: `command.go.${page}`, group: 'command.group.piano', shortcut: goKeys[page],
      perform: () => void navigate({ to: `/pianos/$pianoId/${page}`, params }),
    }));
    return [...goes, { id: 'undo', label: 'command.undo', group: 'command.group.piano', shortcut: 'mod+z', perform: () => { undoHere(file); } }];
  }, [file, navigate]);
  useCommands(commands);
  return null;
}

/** Pages of a piano where cards of the shop are written too. */
const WRITE_IN_BOOK: readonly PianoPage[] = ['work', 'worth', 'room', 'papers', 'care'];

/** Undoes the last step of this window at the piano, or in the book of the shop where the page writes in both. */
function undoHere(file: PianoFile): void {
  const { id } = file.instrument;
  const isBoth = WRITE_IN_BOOK.some((page) => location.pathname.endsWith(`/${page}`));
  const chain = isBoth ? (lastChain([id, ...BOOKS]) ?? id) : id;
  if (chain === id) undoLast(id, tellerOf(file));
  else undoInShop([chain]);
}
