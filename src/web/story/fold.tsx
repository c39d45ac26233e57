import { type ReactNode, useState } from 'react';

interface FoldProps {
  readonly title: ReactNode;
  readonly children: ReactNode;
  readonly id?: string;
  readonly isOpen?: boolean;
}

/** Something that opens under its title, by hand or as soon as it is asked to be open; what is in it is fetched only once it is opened. */
export function Fold({ title, children, id, isOpen = false }: FoldProps) {
  const [open, setOpen] = useState(isOpen);
  const [wasAsked, setAsked] = useState(isOpen);
  if (isOpen !== wasAsked) {
    setAsked(isOpen);
    if (isOpen) setOpen(true);
  }
  return (
    <details id={id} className="fold" open={open} onToggle={(event) => { setOpen(event.currentTarget.open); }}>
      <summary>{title}</summary>
      {open && <div className="fold-in">{children}</div>}
    </details>
  );
}
