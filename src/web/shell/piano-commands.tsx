import { useNavigate } from '@tanstack/react-router';
import { useMemo } from 'react';
import type { PianoFile } from '../api/queries.ts';
import { type Command, useCommands } from '../commands/registry.ts';
import { tellerOf } from '../undo/piano-undo.ts';
import { undoLast } from '../undo/undo.ts';
import { type PianoPage, pianoPages } from './piano-pages.ts';

const goKeys: Readonly<Record<PianoPage, string>> = { story: 'g s', readings: 'g r', strings: 'g t', belly: 'g b', action: 'g a', tone: 'g o', work: 'g w', proof: 'g p' };

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
    return [...goes, { id: 'undo', label: 'command.undo', group: 'command.group.piano', shortcut: 'mod+z', perform: () => { undoLast(id, tellerOf(file)); } }];
  }, [file, navigate]);
  useCommands(commands);
  return null;
}
