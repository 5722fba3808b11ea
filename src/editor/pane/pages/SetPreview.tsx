import { type RefObject, useEffect, useId, useRef, useState } from 'react';
import type { PatternPage, PatternSet } from '../../../patterns/result.ts';
import type { Plan } from '../../../plan/types.ts';
import { DrawingView } from '../../control/DrawingView.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { KeyMap, PagesOnFace } from './KeyMap.tsx';
import { PageDialog } from './PageDialog.tsx';

/** One pattern: how its pages join, where they lie, and every page as it prints. */
export function SetPreview({ plan, set, title }: { plan: Plan; set: PatternSet; title: string }) {
  const t = useWords();
  const say = useSay();
  const id = useId();
  const [large, show] = useState<number | null>(null);
  const named = { ...set, title };
  return (
    <section aria-labelledby={id}>
      <h3 id={id} className="section-title">
        {title}
      </h3>
      <p className="note">
        {t('pages.count', { pages: set.pages.length, rows: set.rows, columns: set.columns })}
        {set.turned ? `, ${t('pages.turned')}` : ''}.{' '}
        <Typeset text={t('pages.size', { width: say.short(set.width), height: say.short(set.height) })} />
      </p>
      <div className="set-maps">
        <PagesOnFace plan={plan} set={named} />
        <KeyMap set={named} />
      </div>
      <ul className="thumbs">
        {set.pages.map((page, i) => (
          <Thumb key={page.name} page={page} title={title} onOpen={() => show(i)} />
        ))}
      </ul>
      {large === null ? null : (
        <PageDialog set={named} page={large} onShow={show} onClose={() => show(null)} />
      )}
    </section>
  );
}

function Thumb({ page, title, onOpen }: { page: PatternPage; title: string; onOpen: () => void }) {
  const t = useWords();
  const ref = useRef<HTMLLIElement>(null);
  const seen = useSeen(ref);
  const { width, height } = page.drawing;
  return (
    <li ref={ref}>
      <button
        type="button"
        className="thumb"
        aria-label={t('pages.open', { name: page.name, title })}
        onClick={onOpen}
      >
        <span className="thumb-paper" style={{ aspectRatio: `${width} / ${height}` }}>
          {seen ? (
            <DrawingView drawing={page.drawing} label={t('pages.picture', { name: page.name, title })} />
          ) : null}
        </span>
        <span className="thumb-name">{page.name}</span>
      </button>
    </li>
  );
}

/** Turns true when an element first comes near the screen: drawings far down are not drawn before. */
function useSeen(ref: RefObject<HTMLElement | null>): boolean {
  const [seen, setSeen] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (!element || seen) return;
    const watch = new IntersectionObserver(
      (entries) => {
        if (entries.some((e) => e.isIntersecting)) setSeen(true);
      },
      { rootMargin: '400px' },
    );
    watch.observe(element);
    return () => watch.disconnect();
  }, [ref, seen]);
  return seen;
}
