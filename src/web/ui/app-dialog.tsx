import type { ReactNode } from 'react';
import { Dialog } from 'react-aria-components/Dialog';
import { Heading } from 'react-aria-components/Heading';
import { Modal, ModalOverlay } from 'react-aria-components/Modal';
import { useSay } from '../language/use-say.ts';
import './dialog.css';

interface AppDialogProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** `side`: beside the page, which stays in view. `wide`: for tables and long text. */
  readonly form?: 'usual' | 'wide' | 'side';
  readonly children: ReactNode;
}

/** A dialog over the page: takes the focus, gives it back, closes with Esc. */
export function AppDialog({ title, isOpen, onClose, form = 'usual', children }: AppDialogProps) {
  const say = useSay();
  return (
    <ModalOverlay
      className={`shade shade-${form}`}
      isOpen={isOpen}
      isDismissable
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Modal className={`modal modal-${form}`}>
        <Dialog className="dialog">
          <header className="dialog-head">
            <Heading slot="title" level={2}>
              {title}
            </Heading>
            <button type="button" className="button button-quiet" onClick={onClose}>
              {say('shell.close')}
            </button>
          </header>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
