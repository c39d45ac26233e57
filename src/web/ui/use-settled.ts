import { useEffect, useState } from 'react';

const SETTLED_MS = 250;

/** What somebody types, once they have paused: for what is asked of the server. */
export function useSettled(typed: string): string {
  const [settled, setSettled] = useState(typed);
  useEffect(() => {
    const timer = setTimeout(() => { setSettled(typed); }, SETTLED_MS);
    return () => { clearTimeout(timer); };
  }, [typed]);
  return settled;
}
