import { type QuantityName, quantityOf } from '#instrument';
import type { RefObject } from 'react';
import { Dialog } from 'react-aria-components/Dialog';
import { Heading } from 'react-aria-components/Heading';
import { Popover } from 'react-aria-components/Popover';
import { sayMaybe, useFigures, useSay } from '../language/use-say.ts';
import { HelpDrawing } from './help-drawing.tsx';
import '../ui/dialog.css';

interface HelpPopoverProps {
  readonly quantity: QuantityName;
  readonly anchor: RefObject<HTMLElement | null>;
  readonly onClose: () => void;
}

/** How a quantity is measured and what commonly goes wrong, with its usual range. */
export default function HelpPopover({ quantity, anchor, onClose }: HelpPopoverProps) {
  const say = useSay();
  const figure = useFigures();
  const { unit, plausible, decimals } = quantityOf(quantity);
  const [low, high] = plausible;
  const tidy = Number.isInteger(low) && Number.isInteger(high) ? 0 : decimals;
  return (
    <Popover
      className="popover"
      triggerRef={anchor}
      isOpen
      placement="bottom start"
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Dialog className="dialog">
        <Heading slot="title" level={3}>
          {sayMaybe(say, `quantity.${quantity}.name`)}
        </Heading>
        <HelpDrawing quantity={quantity} />
        <p>{sayMaybe(say, `quantity.${quantity}.howTo`)}</p>
        <p>
          <strong>{say('shell.help.mistakes')}</strong> {sayMaybe(say, `quantity.${quantity}.mistakes`)}
        </p>
        <p className="soft small">{say('shell.help.range', { low: figure(low, tidy), high: figure(high, tidy, unit) })}</p>
      </Dialog>
    </Popover>
  );
}
