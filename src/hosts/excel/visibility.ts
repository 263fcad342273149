import type { PaneHost } from '../../pane/host';

type Watch = NonNullable<PaneHost['watchCell']>;

/**
 * Tells when the pane is opened and closed; gives back how to stop. Where Excel cannot tell it, nothing is told: the pane then counts as
 * open for good.
 */
export function onVisibility(tell: (isVisible: boolean) => void): () => void {
  // Old hosts have no such part, whatever the types say.
  const addin = (typeof Office === 'undefined' ? undefined : Office.addin) as Office.Addin | undefined;
  const listening = addin
    ?.onVisibilityModeChanged(({ visibilityMode }) => tell(visibilityMode === Office.VisibilityMode.taskpane))
    .catch(() => undefined);
  return () => void listening?.then((stop) => stop?.());
}

/**
 * Watches only while the pane is open. The page of a shared runtime lives on when its pane is closed, and has to answer functions
 * then: it asks Excel for nothing that nobody sees.
 */
export const whileVisible =
  (watch: Watch): Watch =>
  (tell) => {
    let stop: (() => void) | undefined = watch(tell);
    const forget = onVisibility((isVisible) => {
      if (isVisible) stop ??= watch(tell);
      else {
        stop?.();
        stop = undefined;
      }
    });
    return () => {
      forget();
      stop?.();
      stop = undefined;
    };
  };
