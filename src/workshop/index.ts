export { parseClipboard } from './clipboard.ts';
export { changeSchema, eventSchema, readingBatchAnswerSchema, readingBatchSchema, readingEntrySchema, workItemDraftSchema, workItemSchema } from './records.ts';
export type { Change, LogEvent, ReadingBatch, ReadingBatchAnswer, ReadingEntry, WorkItem, WorkItemDraft } from './records.ts';
export { routes } from './routes.ts';
export type { Answer, Body, ImportPreview, ImportRow, ImportSource, Query, Route, RouteName, Routes } from './routes.ts';
