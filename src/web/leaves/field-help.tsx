import type { QuantityName } from '#instrument';
import { Suspense, lazy, useRef, useState } from 'react';
import { sayMaybe, useSay } from '../language/use-say.ts';
import './leaves.css';

const HelpPopover = lazy(() => import('./help-popover.tsx'));

/** The help beside a field: how to measure, what goes wrong, and a drawing where one helps. */
export function FieldHelp({ quantity }: { readonly quantity: QuantityName }) {
  const say = useSay();
  const button = useRef<HTMLButtonElement>(null);
  const [isOpen, setOpen] = useState(false);
  if (!say.knows(`quantity.${quantity}.howTo`)) return null;
  return (
    <>
      <button
        ref={button}
        type="button"
        className="help-button"
        aria-haspopup="dialog"
        aria-expanded={isOpen}
        aria-label={say('shell.help.of', { what: sayMaybe(say, `quantity.${quantity}.name`) })}
        onClick={() => { setOpen((open) => !open); }}
      >
        ?
      </button>
      {isOpen && (
        <Suspense fallback={null}>
          <HelpPopover quantity={quantity} anchor={button} onClose={() => { setOpen(false); }} />
        </Suspense>
      )}
    </>
  );
}
