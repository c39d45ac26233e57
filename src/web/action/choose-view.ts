import { createContext, useContext } from 'react';

/** Turns the Action page to another of its views. */
export const ChooseView = createContext<(id: 'measured' | 'taken') => void>(() => undefined);

/** The way from one view of the Action page to another. */
export function useChooseView(): (id: 'measured' | 'taken') => void {
  return useContext(ChooseView);
}
