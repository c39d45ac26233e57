import type { Instrument } from '#instrument';
import type { MessageKey } from '#text';
import { type ComponentType, lazy } from 'react';
import { TouchView } from './touch-view.tsx';

/** One way to look at the action: under `id` it is kept, by `label` it is chosen, by `command` it is called. */
export interface ActionView {
  readonly id: string;
  readonly label: MessageKey;
  readonly command: MessageKey;
  /** The kind of piano it tells about; absent: of both. */
  readonly only?: Instrument['kind'];
  readonly View: ComponentType;
}

/** What was measured comes with the page, the others when they are asked for. To add one is to add an entry. */
export const actionViews = [
  { id: 'measured', label: 'action.view.measured', command: 'command.action.view.measured', View: TouchView },
  { id: 'taken', label: 'action.view.taken', command: 'command.action.view.taken', View: lazy(async () => ({ default: (await import('./taken/taken-view.tsx')).TakenView })) },
  { id: 'plan', only: 'grand', label: 'action.view.plan', command: 'command.action.view.plan', View: lazy(async () => ({ default: (await import('./plan/plan-view.tsx')).PlanView })) },
  { id: 'leads', label: 'action.view.leads', command: 'command.action.view.leads', View: lazy(async () => ({ default: (await import('./leads/leads-view.tsx')).LeadsView })) },
  { id: 'leastWork', label: 'action.view.leastWork', command: 'command.action.view.leastWork', View: lazy(async () => ({ default: (await import('./least-work/least-work-view.tsx')).LeastWorkView })) },
  { id: 'regulation', label: 'action.view.regulation', command: 'command.action.view.regulation', View: lazy(async () => ({ default: (await import('./regulation/regulation-view.tsx')).RegulationView })) },
  { id: 'upright', only: 'upright', label: 'action.view.upright', command: 'command.action.view.upright', View: lazy(async () => ({ default: (await import('./upright/upright-view.tsx')).UprightView })) },
  { id: 'hammers', label: 'action.view.hammers', command: 'command.action.view.hammers', View: lazy(async () => ({ default: (await import('./hammers/hammers-view.tsx')).HammersView })) },
  { id: 'movement', only: 'grand', label: 'action.view.movement', command: 'command.action.view.movement', View: lazy(async () => ({ default: (await import('./movement/movement-view.tsx')).MovementView })) },
] as const satisfies readonly ActionView[];

/** The views that tell about a kind of piano. */
export function viewsOf(kind: Instrument['kind']): readonly (ActionView & { readonly id: ActionViewId })[] {
  return actionViews.filter((view) => !('only' in view) || view.only === kind);
}

export type ActionViewId = (typeof actionViews)[number]['id'];
