import { usePiano } from '../../api/piano.tsx';
import { writeKept } from '../../kept/kept.ts';
import { useChooseView } from '../choose-view.ts';

/** Goes to where a part of the action is taken down. */
export function useTakePart(): (part: 'leads' | 'regulation' | 'hammers') => void {
  const { id } = usePiano();
  const chooseView = useChooseView();
  return (part) => {
    writeKept(sessionStorage, `wrestplank.action.part.${id}`, part);
    chooseView('taken');
  };
}
