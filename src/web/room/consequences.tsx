import type { PerBand } from '#room';
import type { RoomConsequences, RoomGiven, RoomRecord } from '#workshop';
import { useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { BoomPanel } from './boom-panel.tsx';
import { HangingPanel } from './hanging-panel.tsx';
import { LoudnessPanel } from './loudness-panel.tsx';
import { MeasurePanel } from './measure-panel.tsx';
import { PlacesPanel } from './places-panel.tsx';
import type { ProposedPlace } from './proposed-place.ts';
import { ReverberationPanel } from './reverberation-panel.tsx';
import type { RoomForm } from './room-draft.ts';
import { RoomDrawing } from './room-drawing.tsx';

interface ConsequencesProps {
  readonly given: RoomGiven;
  readonly known: RoomConsequences;
  /** The kept room, where this one is kept. */
  readonly room?: RoomRecord;
  /** How long the kept room rings, where this one is only tried. */
  readonly before?: PerBand | undefined;
  /** Puts the piano elsewhere, while the room is being described. */
  readonly onPlace?: (fields: Partial<RoomForm>) => void;
}

/** All that follows from one room, beside what is kept where it is only tried. */
export function Consequences({ given, known, room, before, onPlace }: ConsequencesProps) {
  const { isCurrent } = usePiano();
  const [places, setPlaces] = useState<readonly ProposedPlace[]>([]);
  return (
    <div className="room-panels">
      <RoomDrawing given={given} known={known} places={places} onPlace={onPlace} />
      <ReverberationPanel given={given} known={known} before={before} />
      <BoomPanel given={given} known={known} />
      <LoudnessPanel given={given} known={known} />
      <HangingPanel known={known} />
      <PlacesPanel given={given} known={known} onPlaces={setPlaces} onPlace={onPlace} />
      {room !== undefined && <MeasurePanel room={room} known={known} canWrite={isCurrent} />}
    </div>
  );
}
