import { useEditor } from '../state/hooks.ts';
import { voiced } from '../words/voiced.ts';

/** Tells screen readers what was done, with its measures. Two places in turn, so that repeats are read too. */
export function Announcer() {
  const said = useEditor((s) => s.said);
  return (
    <>
      {[0, 1].map((n) => (
        <div key={n} className="hidden-text" aria-live="polite" role="status">
          {said.count % 2 === n ? voiced(said.text) : ''}
        </div>
      ))}
    </>
  );
}
