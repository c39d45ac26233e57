import { useSay } from '../language/use-say.ts';
import { closeToast, useToasts } from './toasts.ts';
import './toast.css';

/** The toasts at the foot of the page, read out as they come. */
export function ToastList() {
  const say = useSay();
  const toasts = useToasts();
  return (
    <div className="toasts no-print" role="status" aria-live="polite">
      {toasts.map(({ id, text, tone, action }) => (
        <div key={id} className={`toast toast-${tone}`}>
          <span>{text}</span>
          {action !== undefined && (
            <button
              type="button"
              className="button"
              onClick={() => {
                closeToast(id);
                action.perform();
              }}
            >
              {action.label}
            </button>
          )}
          <button type="button" className="button button-quiet" onClick={() => { closeToast(id); }}>
            {say('shell.close')}
          </button>
        </div>
      ))}
    </div>
  );
}
