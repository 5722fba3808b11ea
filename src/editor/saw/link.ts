import { bringLinked } from '../kept/session.ts';
import type { EditorStore } from '../state/store.ts';
import { t } from '../words/t.ts';

/** `#bench&i=<id>&d=<digits>`: the pieces at the saw of the design that the digits hold. */
const LINK = /^#bench&i=([0-9a-f-]{8,40})&d=(\d+)$/;

export const linkTo = (address: string, id: string, digits: string): { fixed: string; digits: string } => ({
  fixed: `${address.replace(/[/#]*$/, '')}/#bench&i=${id}&d=`,
  digits,
});

/** Whether a text is the address of a page on some network. */
export function isAddress(text: string): boolean {
  try {
    return /^https?:$/.test(new URL(text).protocol);
  } catch {
    return false;
  }
}

/** Only this device reaches its own addresses; a phone cannot. */
export const isOwnAddress = (host: string): boolean =>
  host === 'localhost' || host.endsWith('.localhost') || /^127\.|^\[?::1\]?$/.test(host);

/** Takes the design out of the page's address, if one is there, and opens it. */
export async function takeLinked(store: EditorStore): Promise<void> {
  const found = LINK.exec(location.hash);
  const hash = location.hash;
  if (!hash.startsWith('#bench&')) return;
  history.replaceState(null, '', `${location.pathname}${location.search}#bench`);
  const [, id, digits] = found ?? [];
  // Unpacking brings the format's own description with it: only those who follow a link load it.
  const { unpackDesign } = await import('./transfer.ts');
  const design = id && digits ? await unpackDesign(digits) : null;
  if (!design || !id) {
    store.setState({ notice: { tone: 'bad', text: t('link.broken') } });
    return;
  }
  const copy = t('link.copyName', { name: design.name });
  const kept = await bringLinked(store, id, design, copy);
  if (kept) {
    store.setState({ notice: { tone: 'warn', text: t('link.keptOld', { name: design.name, copy }) } });
  }
}
