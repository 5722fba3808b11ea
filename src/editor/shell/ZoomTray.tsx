import { Maximize2, Minus, Plus } from 'lucide-react';
import { Button } from '../control/Button.tsx';
import { useStore } from '../state/hooks.ts';
import type { EditorStore } from '../state/store.ts';
import { zoomedAt } from '../state/zoom.ts';
import { useWords } from '../words/t.ts';

export function zoomBy(store: EditorStore, factor: number): void {
  const { canvas } = store.getState();
  const middle = { x: (canvas?.clientWidth ?? 0) / 2, y: (canvas?.clientHeight ?? 0) / 2 };
  store.setState((s) => ({ fitted: false, view: zoomedAt(s.view, middle, factor) }));
}

export function ZoomTray() {
  const t = useWords();
  const store = useStore();
  return (
    <fieldset className="tray zoom" aria-label={t('zoom.title')}>
      <Button icon={Plus} look="bare icon" tip={t('zoom.in')} onClick={() => zoomBy(store, 1.25)} />
      <Button icon={Minus} look="bare icon" tip={t('zoom.out')} onClick={() => zoomBy(store, 0.8)} />
      <Button
        icon={Maximize2}
        look="bare icon"
        tip={t('zoom.fit')}
        onClick={() => store.setState({ fitted: true })}
      />
    </fieldset>
  );
}
