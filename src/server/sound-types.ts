import type { RecordingFormat } from '#instrument';

/** The media type a kept sound file is answered as. */
export const soundTypes: Readonly<Record<RecordingFormat, string>> = { wav: 'audio/wav', flac: 'audio/flac', ogg: 'audio/ogg', mp3: 'audio/mpeg', m4a: 'audio/mp4' };
