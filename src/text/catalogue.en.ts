import { action } from './en/action.ts';
import { actionTerms } from './en/action-terms.ts';
import { actionOperations } from './en/action-operations.ts';
import { belly } from './en/belly.ts';
import { bellyPage } from './en/belly-page.ts';
import { cli } from './en/cli.ts';
import { command } from './en/command.ts';
import { issues } from './en/issues.ts';
import { operations } from './en/operations.ts';
import { leastWork } from './en/least-work.ts';
import { leads } from './en/leads.ts';
import { movement } from './en/movement.ts';
import { order } from './en/order.ts';
import { people } from './en/people.ts';
import { pianos } from './en/pianos.ts';
import { plan } from './en/plan.ts';
import { planningOperations } from './en/planning-operations.ts';
import { proof } from './en/proof.ts';
import { proofParts } from './en/proof-parts.ts';
import { quantities } from './en/quantities.ts';
import { readings } from './en/readings.ts';
import { recording } from './en/recording.ts';
import { regulation } from './en/regulation.ts';
import { upright } from './en/upright.ts';
import { rescale } from './en/rescale.ts';
import { scale } from './en/scale.ts';
import { settings } from './en/settings.ts';
import { sheets } from './en/sheets.ts';
import { shell } from './en/shell.ts';
import { story } from './en/story.ts';
import { strings } from './en/strings.ts';
import { strokeOperation } from './en/stroke-operation.ts';
import { stringOperations } from './en/string-operations.ts';
import { tone } from './en/tone.ts';
import { touch } from './en/touch.ts';
import { toneCompass } from './en/tone-compass.ts';
import { tuning } from './en/tuning.ts';
import { tuningOperations } from './en/tuning-operations.ts';
import { tuningQuantities } from './en/tuning-quantities.ts';
import { work } from './en/work.ts';

/** Every English message, one file per area of the program. */
export const en = {
  ...shell,
  ...people,
  ...pianos,
  ...readings,
  ...quantities,
  ...scale,
  ...tuningQuantities,
  ...operations,
  ...actionOperations,
  ...strokeOperation,
  ...planningOperations,
  ...toneCompass,
  ...tuning,
  ...tuningOperations,
  ...stringOperations,
  ...strings,
  ...rescale,
  ...leads,
  ...movement,
  ...order,
  ...belly,
  ...bellyPage,
  ...issues,
  ...recording,
  ...action,
  ...actionTerms,
  ...plan,
  ...regulation,
  ...upright,
  ...leastWork,
  ...sheets,
  ...tone,
  ...touch,
  ...work,
  ...proof,
  ...proofParts,
  ...story,
  ...settings,
  ...command,
  ...cli,
} as const;

/** A key of the message catalogue. */
export type MessageKey = keyof typeof en;
