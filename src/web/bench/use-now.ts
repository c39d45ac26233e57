import { useEffect, useState } from 'react';

/** The moment, anew every so many seconds. */
export function useNow(everySeconds: number): Date {
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const timer = setInterval(() => { setNow(new Date()); }, everySeconds * 1000);
    return () => { clearInterval(timer); };
  }, [everySeconds]);
  return now;
}
