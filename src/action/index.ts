export type { Cause, Finding, KeyFigures, KeyTouch, LeverArms, Measured, NextMeasurement, Remedy, TouchAnalysis, TouchInput, TouchSummary } from './analysis.ts';
