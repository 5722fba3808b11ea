import { ChevronLeft, ChevronRight, Copy } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import type { Design } from '../../design/schema.ts';
import { Button } from '../control/Button.tsx';
import { Dialog } from '../control/Dialog.tsx';
import { lazyPart } from '../control/lazyPart.tsx';
import { Guard } from '../frame/Guard.tsx';
import { useEditor, useSettledDesign, useStore } from '../state/hooks.ts';
import { say } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import { isAddress, isOwnAddress, type Linked, linkTo, takeLink } from './link.ts';

const QrPicture = lazyPart(() => import('./QrPicture.tsx').then((m) => m.QrPicture));

const KEY = 'showface:address';

/** The way of a design to a phone on the same network: an address as a code, drawn only when it is asked for. */
export function LinkDialog({ onClose }: { onClose: () => void }) {
  const t = useWords();
  const own = isOwnAddress(location.hostname);
  const [address, setAddress] = useState(() =>
    own ? remembered() : new URL('.', location.href).href.replace(/\/$/, ''),
  );
  const good = isAddress(address);
  return (
    <Dialog title={t('link.title')} className="link-dialog" onClose={onClose}>
      <p>{t('link.lead')}</p>
      {own ? (
        <>
          <p>{t('link.localhost')}</p>
          <label className="link-address">
            <span>{t('link.address')}</span>
            <input
              type="url"
              inputMode="url"
              autoComplete="off"
              spellCheck={false}
              value={address}
              placeholder="http://192.168.1.20:4173"
              aria-invalid={address !== '' && !good}
              onChange={(e) => {
                setAddress(e.currentTarget.value.trim());
                remember(e.currentTarget.value.trim());
              }}
            />
          </label>
          {address !== '' && !good ? (
            <p className="warn-text" role="alert">
              {t('link.addressBad')}
            </p>
          ) : null}
        </>
      ) : null}
      {good ? <Code address={address} /> : null}
      <TakeLink onTaken={onClose} />
    </Dialog>
  );
}

/** What a code holds: digits of each, and whether all of it fits. */
interface Packed {
  readonly codes: readonly string[];
  readonly fits: boolean;
}

const NOTHING: Packed = { codes: [], fits: false };

/** The design for the other device, or only what is done of it: that goes into as many codes as it takes. */
async function packed(design: Design, what: Linked): Promise<Packed> {
  const { packDesign, packJob, MOST_BYTES } = await import('./transfer.ts');
  if (what === 'f') {
    const parts = design.job ? await packJob(design.job) : [];
    return {
      codes: parts.map(({ digits }) => digits),
      fits: parts.every(({ bytes }) => bytes <= MOST_BYTES),
    };
  }
  const whole = await packDesign(design);
  if (whole.bytes <= MOST_BYTES || !design.job)
    return { codes: [whole.digits], fits: whole.bytes <= MOST_BYTES };
  // What is done has codes of its own.
  const bare = await packDesign({ ...design, job: undefined });
  return { codes: [bare.digits], fits: bare.bytes <= MOST_BYTES };
}

function Code({ address }: { address: string }) {
  const t = useWords();
  const design = useSettledDesign();
  const id = useEditor((s) => s.designId);
  const [what, choose] = useState<Linked>('d');
  const [found, setFound] = useState<{ readonly of: Linked; readonly packed: Packed } | null>(null);
  const [at, turn] = useState(0);
  useEffect(() => {
    let gone = false;
    void packed(design, what)
      // A browser that cannot pack still shows the address.
      .catch(() => NOTHING)
      .then((done) => {
        if (gone) return;
        setFound({ of: what, packed: done });
        turn(0);
      });
    return () => {
      gone = true;
    };
  }, [design, what]);
  if (!found || !id) return null;
  const { codes, fits } = found.packed;
  const code = codes[at];
  const link = code === undefined || !fits ? null : linkTo(address, id, code, found.of);
  return (
    <>
      {design.job ? (
        <fieldset className="wrong-choices">
          <legend className="hidden-text">{t('link.title')}</legend>
          {(['d', 'f'] as const).map((one) => (
            <label key={one}>
              <input type="radio" name="linked" checked={what === one} onChange={() => choose(one)} />
              <span>{t(one === 'd' ? 'link.design' : 'link.done')}</span>
            </label>
          ))}
        </fieldset>
      ) : null}
      <p>{t(found.of === 'f' ? 'link.withDone' : fits ? 'link.withDesign' : 'link.tooLarge')}</p>
      {found.of === 'd' && fits && design.photos ? <p className="note">{t('link.noPhotos')}</p> : null}
      {codes.length > 1 ? (
        <p className="link-codes">
          <Button
            icon={ChevronLeft}
            label={t('bench.previous')}
            disabled={at === 0}
            onClick={() => turn(at - 1)}
          />
          <span>{t('link.codeOf', { number: at + 1, all: codes.length })}</span>
          <Button
            icon={ChevronRight}
            label={t('bench.next')}
            disabled={at === codes.length - 1}
            onClick={() => turn(at + 1)}
          />
        </p>
      ) : null}
      <Guard>
        <QrPicture
          text={link ? link.fixed : `${address}/#bench`}
          digits={link ? link.digits : ''}
          label={t('link.code', { address })}
        />
      </Guard>
      <p className="note link-text">{address}</p>
      {codes.length > 0 ? (
        <LinkText
          text={codes
            .map((one) => linkTo(address, id, one, found.of))
            .map(({ fixed, digits }) => fixed + digits)
            .join('\n')}
        />
      ) : null}
    </>
  );
}

/** The links as text, for a device without a camera. */
function LinkText({ text }: { text: string }) {
  const t = useWords();
  const store = useStore();
  const field = useRef<HTMLTextAreaElement>(null);
  const copy = () => {
    // Over a plain address the browser lets nothing onto its clipboard: the text stands selected.
    field.current?.select();
    void navigator.clipboard?.writeText(text).then(
      () => say(store, t('link.copied')),
      () => {},
    );
  };
  return (
    <details className="more">
      <summary>{t('link.asText')}</summary>
      <textarea
        ref={field}
        className="link-area"
        readOnly
        rows={3}
        value={text}
        aria-label={t('link.asText')}
      />
      <Button icon={Copy} onClick={copy}>
        {t('link.copy')}
      </Button>
    </details>
  );
}

/** Takes links that were copied on the other device. */
function TakeLink({ onTaken }: { onTaken: () => void }) {
  const t = useWords();
  const store = useStore();
  const [text, setText] = useState('');
  const take = async () => {
    for (const link of text.split(/\s+/).filter(Boolean)) {
      if (!(await takeLink(store, link))) return;
    }
    onTaken();
  };
  return (
    <details className="more">
      <summary>{t('link.take')}</summary>
      <textarea
        className="link-area"
        rows={3}
        value={text}
        aria-label={t('link.take')}
        onChange={(e) => setText(e.currentTarget.value)}
      />
      <Button disabled={text.trim() === ''} onClick={() => void take()}>
        {t('link.put')}
      </Button>
    </details>
  );
}

function remembered(): string {
  try {
    return localStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
}

function remember(address: string): void {
  try {
    localStorage.setItem(KEY, address);
  } catch {
    // Storage may be blocked; the address then lasts as long as the dialog.
  }
}
