import { bringLinked, mergeLinked } from '../kept/session.ts';
import type { EditorStore } from '../state/store.ts';
import { t } from '../words/t.ts';

/**
 * `#bench&i=<id>&d=<digits>`: the pieces at the saw of the design that the digits hold; with `f` they hold what is done
 * of a design that the device has.
 */
const LINK = /#bench&i=([0-9a-f-]{8,40})&([df])=(\d+)$/;

export type Linked = 'd' | 'f';

export const linkTo = (
  address: string,
  id: string,
  digits: string,
  what: Linked = 'd',
): { fixed: string; digits: string } => ({
  fixed: `${address.replace(/[/#]*$/, '')}/#bench&i=${id}&${what}=`,
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
  const { hash } = location;
  if (!hash.startsWith('#bench&')) return;
  history.replaceState(null, '', `${location.pathname}${location.search}#bench`);
  await takeLink(store, hash);
}

/** Takes what a link holds: a design, or what is done of one. False where it holds neither, which is told. */
export async function takeLink(store: EditorStore, link: string): Promise<boolean> {
  const [, id, what, digits] = LINK.exec(link.trim()) ?? [];
  const refuse = (why: 'link.broken' | 'link.unknown') => {
    store.setState({ notice: { tone: 'bad', text: t(why) } });
    return false;
  };
  if (!id || !digits) return refuse('link.broken');
  // Unpacking brings the format's own description with it: only those who follow a link load it.
  const { unpackDesign, unpackJob } = await import('./transfer.ts');
  if (what === 'f') {
    const job = await unpackJob(digits);
    if (!job) return refuse('link.broken');
    return (await mergeLinked(store, id, job, t('link.merged'))) || refuse('link.unknown');
  }
  const design = await unpackDesign(digits);
  if (!design) return refuse('link.broken');
  const copy = t('link.copyName', { name: design.name });
  const kept = await bringLinked(store, id, design, copy);
  if (kept) {
    store.setState({ notice: { tone: 'warn', text: t('link.keptOld', { name: design.name, copy }) } });
  }
  return true;
}
