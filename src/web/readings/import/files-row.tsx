import { useState } from 'react';
import { useSay } from '../../language/use-say.ts';
import { useDesk } from '../desk.tsx';
import { ExportLinks } from './export-links.tsx';
import { ImportDialog } from './import-dialog.tsx';
import { useImport } from './use-import.ts';

/** Readings into a file and, while the stay is open, from one. */
export function FilesRow() {
  const say = useSay();
  const { canWrite } = useDesk();
  const [isImporting, setImporting] = useState(false);
  const importing = useImport();
  return (
    <div className="row">
      {canWrite && <button type="button" className="button" onClick={() => { setImporting(true); }}>{say('readings.import')}</button>}
      <ExportLinks />
      {isImporting && <ImportDialog importing={importing} onClose={() => { setImporting(false); }} />}
    </div>
  );
}
