import { useEffect } from 'react';

const CONTROLS =
  'button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, a[href], [tabindex="0"]';

/** Parts of the page within which the focus is handed on; where a whole view goes, the one that comes takes it. */
const REGIONS = '[role=tabpanel], .parts-side, .title-block, .drawing, .notice, .first, .saw, dialog';

/**
 * Every control that disappears, or can no longer be pressed, hands the focus on: to what came in its place, else to
 * the control that follows, else to the one before it, within its part of the page. Who knows better (`regainFocus`)
 * goes first.
 */
export function useHandOn(): void {
  useEffect(() => {
    let last: Element | null = null;
    const onFocus = (e: FocusEvent) => {
      last = e.target instanceof Element ? e.target : null;
    };
    const watch = new MutationObserver((records) => {
      const lost = last;
      if (!lost || (lost.isConnected && !lost.matches(':disabled'))) return;
      // After whoever gives the focus on for itself.
      queueMicrotask(() => {
        const now = document.activeElement;
        if (now !== document.body && now !== lost) return;
        last = null;
        heirOf(lost, records)?.focus({ preventScroll: true });
      });
    });
    addEventListener('focusin', onFocus);
    watch.observe(document.body, { childList: true, subtree: true, attributeFilter: ['disabled'] });
    return () => {
      removeEventListener('focusin', onFocus);
      watch.disconnect();
    };
  }, []);
}

/** Who gets the focus of a control that is gone, by what was changed in the page at once. */
function heirOf(lost: Element, records: readonly MutationRecord[]): HTMLElement | null {
  if (lost.isConnected) return nearest(lost, () => false);
  const gone = records.find((r) => [...r.removedNodes].some((node) => node.contains(lost)));
  if (!gone || !(gone.target instanceof Element) || !gone.target.isConnected) return null;
  const { target, nextSibling, previousSibling } = gone;
  const came = records
    .filter((r) => r.target === target)
    .flatMap((r) => [...r.addedNodes])
    .find((node) => node instanceof Element && node.isConnected && controlsIn(node).length > 0);
  if (came instanceof Element) return controlsIn(came)[0] ?? null;
  if (nextSibling?.isConnected) return nearest(nextSibling, (at) => nextSibling.contains(at));
  if (previousSibling?.isConnected) return nearest(previousSibling, () => false);
  return nearest(target, () => false);
}

/** The first control after a place of the page (or in it, where `within` says so), else the last one before it. */
function nearest(place: Node, within: (control: Element) => boolean): HTMLElement | null {
  const region = (place instanceof Element ? place : place.parentElement)?.closest<HTMLElement>(REGIONS);
  if (!region) return null;
  const controls = controlsIn(region).filter((c) => c !== place);
  const isAfter = (c: Element) =>
    within(c) ||
    (place.compareDocumentPosition(c) &
      (Node.DOCUMENT_POSITION_FOLLOWING | Node.DOCUMENT_POSITION_CONTAINED_BY)) ===
      Node.DOCUMENT_POSITION_FOLLOWING;
  return controls.find(isAfter) ?? controls.at(-1) ?? region;
}

/** What the Tab key reaches in a part of the page, itself included, in its order. */
const controlsIn = (part: Element): HTMLElement[] =>
  [part, ...part.querySelectorAll(CONTROLS)].filter(
    (c): c is HTMLElement =>
      c instanceof HTMLElement && c.matches(CONTROLS) && c.tabIndex >= 0 && c.checkVisibility(),
  );
