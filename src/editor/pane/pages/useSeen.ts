import { type RefObject, useEffect, useState } from 'react';

/** Turns true when an element first comes near the screen: drawings far down are not drawn before. */
export function useSeen(ref: RefObject<HTMLElement | null>): boolean {
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
