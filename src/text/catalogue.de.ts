import type { MessageKey } from './catalogue.en.ts';
import { action } from './de/action.ts';
import { actionTerms } from './de/action-terms.ts';
import { actionOperations } from './de/action-operations.ts';
import { belly } from './de/belly.ts';
import { bellyPage } from './de/belly-page.ts';
import { cli } from './de/cli.ts';
import { command } from './de/command.ts';
import { issues } from './de/issues.ts';
import { operations } from './de/operations.ts';
import { leastWork } from './de/least-work.ts';
import { leads } from './de/leads.ts';
import { movement } from './de/movement.ts';
import { order } from './de/order.ts';
import { people } from './de/people.ts';
import { pianos } from './de/pianos.ts';
import { plan } from './de/plan.ts';
import { planningOperations } from './de/planning-operations.ts';
import { proof } from './de/proof.ts';
import { proofParts } from './de/proof-parts.ts';
import { quantities } from './de/quantities.ts';
import { readings } from './de/readings.ts';
import { recording } from './de/recording.ts';
import { regulation } from './de/regulation.ts';
import { upright } from './de/upright.ts';
import { rescale } from './de/rescale.ts';
import { scale } from './de/scale.ts';
import { settings } from './de/settings.ts';
import { sheets } from './de/sheets.ts';
import { shell } from './de/shell.ts';
import { story } from './de/story.ts';
import { strings } from './de/strings.ts';
import { strokeOperation } from './de/stroke-operation.ts';
import { stringOperations } from './de/string-operations.ts';
import { tone } from './de/tone.ts';
import { touch } from './de/touch.ts';
import { toneCompass } from './de/tone-compass.ts';
import { tuning } from './de/tuning.ts';
import { tuningOperations } from './de/tuning-operations.ts';
import { tuningQuantities } from './de/tuning-quantities.ts';
import { work } from './de/work.ts';

/** Every German message, one file per area of the program. */
export const de: Readonly<Record<MessageKey, string>> = {
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
};
