import type { MessageKey } from '#text';
import { type ComponentType, lazy } from 'react';
import { RecordingsView } from './recordings/recordings-view.tsx';

/** One way to look at how a piano sounds: under `id` it is kept, by `label` it is chosen, by `command` it is called. */
export interface ToneView {
  readonly id: string;
  readonly label: MessageKey;
  readonly command: MessageKey;
  readonly View: ComponentType;
}

/** The recordings come with the page, the others when they are asked for. To add one is to add an entry. */
export const toneViews = [
  { id: 'recordings', label: 'tone.view.recordings', command: 'command.tone.view.recordings', View: RecordingsView },
  { id: 'compass', label: 'tone.view.compass', command: 'command.tone.view.compass', View: lazy(async () => ({ default: (await import('./compass/compass-view.tsx')).CompassView })) },
  { id: 'voicing', label: 'tone.view.voicing', command: 'command.tone.view.voicing', View: lazy(async () => ({ default: (await import('./voicing/voicing-view.tsx')).VoicingView })) },
  { id: 'sustain', label: 'tone.view.sustain', command: 'command.tone.view.sustain', View: lazy(async () => ({ default: (await import('./sustain/sustain-view.tsx')).SustainView })) },
  { id: 'tuning', label: 'tone.view.tuning', command: 'command.tone.view.tuning', View: lazy(async () => ({ default: (await import('./tuning/tuning-view.tsx')).TuningView })) },
] as const satisfies readonly ToneView[];

export type ToneViewId = (typeof toneViews)[number]['id'];
