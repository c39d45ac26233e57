/** English: recordings. ICU MessageFormat. */
export const recording = {
  'operation.recording-level.title': 'Level of a recording',
  'operation.recording-level.help': 'How loud a recording is, and whether it was clipped, channel by channel: worth a look before anything is measured in it. Full scale is the largest figure the file can hold; where three samples in a row stand there, something louder was cut off.',
  'issue.range.recordingRate': 'This recording has {given} samples a second. From {min} to {max} are read.',
  'issue.range.recordingChannels': 'This recording has {given} channels. From {min} to {max} are read.',
  'issue.length.recordingLong': 'This recording is too long: {given} s. With {channels, plural, one {# channel} other {# channels}} at {sampleRateHz} Hz at most {max} s are worked on at once; cut it into parts.',
  'issue.length.recordingEmpty': 'This recording holds no sound: not one sample.',
  'issue.length.recordingLarge': 'This recording is too large: {given}. At most {max} MB are read here.',
  'issue.format.recordingKind': '{given} cannot be read. A recording may be WAV, FLAC, OGG Vorbis or MP3.',
  'issue.format.recordingCodec': 'The sound in this file is coded as {given}, which is not read. Allowed: {allowed}.',
  'issue.format.recordingHeader': 'The header of this recording cannot be right: {field} is {given}, allowed is {allowed}.',
  'issue.format.recordingCut': 'This recording is cut short or damaged: {has} s of it can be read{says, select, none {} other {, and its header announces {says} s}}. Copy it anew from where it was recorded.',
  'issue.format.recordingDamaged': 'This recording is damaged and cannot be read beyond {at} s ({given}). Copy it anew from where it was recorded.',
  'issue.format.recordingValue': 'Channel {channel} holds {given} at {at} s, where a sample must be {allowed}.',
  'issue.format.recordingChanges': 'Within this recording {given}. It must stay the same from beginning to end.',
  'issue.format.recordingBase64': 'This is no recording in base64 (RFC 4648). Send its bytes in base64, or as a part of a form.',
} as const;
