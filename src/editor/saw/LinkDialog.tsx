import { Suspense, useEffect, useState } from 'react';
import { Dialog } from '../control/Dialog.tsx';
import { lazyPart } from '../control/lazyPart.tsx';
import { Guard } from '../frame/Guard.tsx';
import { useEditor, useSettledDesign } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { isAddress, isOwnAddress, linkTo } from './link.ts';

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
    </Dialog>
  );
}

function Code({ address }: { address: string }) {
  const t = useWords();
  const design = useSettledDesign();
  const id = useEditor((s) => s.designId);
  const [packed, setPacked] = useState<{ digits: string; fits: boolean } | null>(null);
  useEffect(() => {
    let gone = false;
    void import('./transfer.ts')
      .then(async ({ packDesign, MOST_BYTES }) => {
        const { digits, bytes } = await packDesign(design);
        return { digits, fits: bytes <= MOST_BYTES };
      })
      // A browser that cannot pack still shows the address.
      .catch(() => ({ digits: '', fits: false }))
      .then((done) => {
        if (!gone) setPacked(done);
      });
    return () => {
      gone = true;
    };
  }, [design]);
  if (!packed || !id) return null;
  const link = linkTo(address, id, packed.digits);
  return (
    <>
      <p>{t(packed.fits ? 'link.withDesign' : 'link.tooLarge')}</p>
      {packed.fits && design.photos ? <p className="note">{t('link.noPhotos')}</p> : null}
      <Guard>
        <Suspense fallback={null}>
          <QrPicture
            text={packed.fits ? link.fixed : `${address}/#bench`}
            digits={packed.fits ? link.digits : ''}
            label={t('link.code', { address })}
          />
        </Suspense>
      </Guard>
      <p className="note link-text">{address}</p>
    </>
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
