import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { I18nProvider } from 'react-aria-components/I18nProvider';
import './tokens.css';
import './base.css';
import { queryClient } from './api/queries.ts';
import { listenForShortcuts } from './commands/shortcuts.ts';
import { learn, learnFirst } from './language/catalogue.ts';
import { useLocale } from './language/use-say.ts';
import { outbox } from './outbox/the-outbox.ts';
import { router } from './router.tsx';
import { preferences } from './theme/preferences.ts';

function App() {
  return (
    <I18nProvider locale={useLocale()}>
      <QueryClientProvider client={queryClient}>
        <RouterProvider router={router} />
      </QueryClientProvider>
    </I18nProvider>
  );
}

const container = document.getElementById('app');
if (container === null) throw new Error('the page has no place for the program');
listenForShortcuts(document);
outbox.start();
await learnFirst(preferences().language);
/** What the first page does not say comes while it is looked at; a page that needs it sooner asks for it itself. */
const stopWaiting = router.subscribe('onRendered', () => {
  stopWaiting();
  learn(preferences().language).catch(() => undefined);
});
createRoot(container).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
