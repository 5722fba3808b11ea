import { useEffect } from 'react';

/** Names the page by what it shows, the nearest first, as tabs and screen readers tell pages apart. */
export function usePageTitle(...shown: readonly string[]): void {
  const title = [...shown, 'Showface'].filter(Boolean).join(' · ');
  useEffect(() => {
    document.title = title;
  }, [title]);
}
