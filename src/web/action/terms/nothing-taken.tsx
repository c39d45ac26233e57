import { usePiano } from '../../api/piano.tsx';

interface NothingTakenProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly go: string;
  readonly onGo: () => void;
}

/** Says what to take down first, and why. */
export function NothingTaken({ title, lines, go, onGo }: NothingTakenProps) {
  const { isCurrent } = usePiano();
  return (
    <section className="panel">
      <h2>{title}</h2>
      {lines.map((line) => <p key={line}>{line}</p>)}
      {isCurrent && <p><button type="button" className="button button-main" onClick={onGo}>{go}</button></p>}
    </section>
  );
}
