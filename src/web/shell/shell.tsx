import { Link, Outlet } from '@tanstack/react-router';
import { CommandHost } from '../commands/command-host.tsx';
import { FigureHost } from '../figure/figure-host.tsx';
import { useSay } from '../language/use-say.ts';
import { OutboxState } from '../outbox/outbox-state.tsx';
import { ToastList } from '../toast/toast-list.tsx';
import './shell.css';
import '../ui/ui.css';

/** The frame every page stands in: name, shop pages, state of saving, commands. */
export function Shell() {
  const say = useSay();
  return (
    <>
      <header className="top no-print">
        <a className="button skip" href="#page">
          {say('shell.skip')}
        </a>
        <Link to="/pianos" className="top-name">
          <svg className="top-mark" viewBox="0 0 22 20" aria-hidden="true">
            <path fill="currentColor" d="M0 0h6v20H0zM8 0h6v20H8zM16 0h6v20h-6z" />
            <path fill="var(--paper-raised)" d="M4 0h6v12H4zM12 0h6v12h-6z" />
            <path fill="currentColor" d="M5 0h4v11H5zM13 0h4v11h-4z" />
          </svg>
          <span>{say('shell.name')}</span>
        </Link>
        <nav className="nav" aria-label={say('shell.nav.shop')}>
          <Link to="/pianos" activeOptions={{ exact: true }}>
            {say('shell.nav.pianos')}
          </Link>
          <Link to="/bench">{say('shell.nav.bench')}</Link>
          <Link to="/people">{say('shell.nav.people')}</Link>
          <Link to="/parts">{say('shell.nav.parts')}</Link>
          <Link to="/settings">{say('shell.nav.settings')}</Link>
        </nav>
        <div className="top-end">
          <OutboxState />
          <CommandHost />
        </div>
      </header>
      <main id="page" tabIndex={-1}>
        <Outlet />
      </main>
      <FigureHost />
      <ToastList />
    </>
  );
}
