import type { Issue } from '#result';
import { explainIssue } from '#text';
import type { Job } from '#workshop';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Note } from '../../ui/note.tsx';

/** How the work on a recording stands: in line, under way, called off, or come to nothing and why. */
export function JobWords({ job, onCancel }: { readonly job: Job | undefined; readonly onCancel: (id: string) => void }) {
  const say = useSay();
  if (job === undefined || job.status === 'done') return null;
  switch (job.status) {
    case 'waiting':
    case 'running': return (
      <div className="row" role="status">
        <progress value={job.status === 'running' ? job.progress : 0} max={1} aria-label={say('tone.job.progress')} />
        <span>{say(`tone.job.${job.status}`)}</span>
        <button type="button" className="button" onClick={() => { onCancel(job.id); }}>{say('tone.job.cancel')}</button>
      </div>
    );
    case 'cancelled': return <p className="soft">{say('tone.job.cancelled')}</p>;
    case 'failed': return <Failure job={job} />;
  }
}

function Failure({ job: { failure } }: { readonly job: Job }) {
  const say = useSay();
  const locale = useLocale();
  const issues = failure?.issues ?? [];
  return (
    <Note tone="bad">
      <p><span aria-hidden="true">✕ </span>{say(`tone.job.failed.${failure?.reason ?? 'crashed'}`)}</p>
      {issues.map((issue) => <p key={`${issue.path} ${issue.code}`}>{explainIssue(say, issue as Issue, locale)}</p>)}
    </Note>
  );
}
