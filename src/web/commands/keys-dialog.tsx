import { useSay } from '../language/use-say.ts';
import { AppDialog } from '../ui/app-dialog.tsx';
import { KeyList } from './key-list.tsx';

/** The shortcuts that hold on this page. */
export default function KeysDialog({ onClose }: { readonly onClose: () => void }) {
  const say = useSay();
  return (
    <AppDialog title={say('command.keys')} isOpen onClose={onClose}>
      <KeyList />
    </AppDialog>
  );
}
