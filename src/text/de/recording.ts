import type { recording as english } from '../en/recording.ts';

/** German: recordings. ICU MessageFormat. */
export const recording: Readonly<Record<keyof typeof english, string>> = {
  'operation.tone-note.title': 'Ein angeschlagener Ton',
  'operation.tone-note.help': 'Hört einen einzelnen angeschlagenen Ton: welche Taste es ist, f0 und Inharmonizität mit ihrem Gesetz und den Teiltönen, auf denen sie beruhen, jeden Teilton mit seinen Saiten, wie er ausklingt, wie warm oder hell er ist, und wie weit dem zu trauen ist. Eine genannte Taste wird mit der gehörten verglichen, nie einfach geglaubt. B hat nur mit seinem Gesetz und seinen Teiltönen einen Sinn: Zustände werden über die Teiltöne verglichen, die beide haben.',
  'operation.recording-level.title': 'Pegel einer Aufnahme',
  'operation.recording-level.help': 'Wie laut eine Aufnahme ist und ob sie übersteuert war, Kanal für Kanal: einen Blick wert, bevor darin gemessen wird. Vollaussteuerung ist der größte Wert, den die Datei fassen kann; wo drei Abtastwerte hintereinander dort stehen, wurde etwas Lauteres abgeschnitten.',
  'issue.range.recordingRate': 'Diese Aufnahme hat {given} Abtastwerte je Sekunde. Gelesen werden {min} bis {max}.',
  'issue.range.recordingChannels': 'Diese Aufnahme hat {given} Kanäle. Gelesen werden {min} bis {max}.',
  'issue.length.recordingLong': 'Diese Aufnahme ist zu lang: {given} s. Mit {channels, plural, one {# Kanal} other {# Kanälen}} bei {sampleRateHz} Hz werden höchstens {max} s auf einmal bearbeitet; bitte in Teile schneiden.',
  'issue.length.recordingEmpty': 'Diese Aufnahme enthält keinen Ton: keinen einzigen Abtastwert.',
  'issue.length.recordingLarge': 'Diese Aufnahme ist zu groß: {given}. Gelesen werden hier höchstens {max} MB.',
  'issue.format.recordingKind': '{given} ist nicht lesbar. Eine Aufnahme darf WAV, FLAC, OGG Vorbis oder MP3 sein.',
  'issue.format.recordingCodec': 'Der Ton in dieser Datei ist als {given} gespeichert und wird nicht gelesen. Erlaubt: {allowed}.',
  'issue.format.recordingHeader': 'Der Kopf dieser Aufnahme kann nicht stimmen: {field} ist {given}, erlaubt ist {allowed}.',
  'issue.format.recordingCut': 'Diese Aufnahme ist abgeschnitten oder beschädigt: {has} s davon sind lesbar{says, select, none {} other {, ihr Kopf kündigt {says} s an}}. Bitte neu vom Aufnahmegerät kopieren.',
  'issue.format.recordingDamaged': 'Diese Aufnahme ist beschädigt und nach {at} s nicht mehr lesbar ({given}). Bitte neu vom Aufnahmegerät kopieren.',
  'issue.format.recordingValue': 'Kanal {channel} enthält {given} bei {at} s; ein Abtastwert muss {allowed} sein.',
  'issue.format.recordingChanges': 'Innerhalb dieser Aufnahme {given}. Das muss von Anfang bis Ende gleich bleiben.',
  'issue.format.recordingBase64': 'Das ist keine Aufnahme in Base64 (RFC 4648). Ihre Bytes in Base64 schicken, oder als Teil eines Formulars.',
};
