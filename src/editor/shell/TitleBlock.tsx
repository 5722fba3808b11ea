import { Redo2, Undo2 } from 'lucide-react';
import { redoLabel, undoLabel } from '../../design/state.ts';
import { MM_PER_INCH } from '../../measure/units.ts';
import { Button } from '../control/Button.tsx';
import { Measure } from '../control/Measure.tsx';
import { type Read, useDraft } from '../control/useDraft.ts';
import { redoStep, undoStep } from '../state/commit.ts';
import { useCommit, useEditor, useFace, useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { numberText } from '../words/text.ts';
import { ExportMenu } from './ExportMenu.tsx';
import { FileMenu } from './FileMenu.tsx';
import { LookSwitch } from './LookSwitch.tsx';
import { SettingsMenu } from './SettingsMenu.tsx';

/** The title block of the drawing: what it shows, its size and scale, and what concerns it as a whole. */
export function TitleBlock() {
  const t = useWords();
  const store = useStore();
  const name = useEditor((s) => s.edit.design.name);
  const face = useFace();
  const commit = useCommit();
  const saved = useEditor((s) => s.saved);
  const scale = useEditor((s) => s.view.scale);
  const undo = useEditor((s) => undoLabel(s.edit));
  const redo = useEditor((s) => redoLabel(s.edit));
  return (
    <header className="title-block">
      <h1 className="mark">
        <Mark />
        <span>Showface</span>
      </h1>
      <NameCell
        value={name}
        onCommit={(value) =>
          commit([{ kind: 'set', field: 'name', value }], t('did.rename', { name: value }))
        }
      />
      <div className="cell face-cell">
        <span className="caption">{t('title.face')}</span>
        <span>
          <Measure mm={face.width} /> × <Measure mm={face.height} />
        </span>
      </div>
      <div className="cell scale-cell">
        <span className="caption">{t('title.scale')}</span>
        <span>{scaleText(scale)}</span>
      </div>
      <div className="cell saved-cell">
        <span className="caption">{t('title.kept')}</span>
        <span>{t(`saved.${saved}`)}</span>
      </div>
      <div className="title-acts">
        <Button
          icon={Undo2}
          look="bare icon"
          disabled={undo === null}
          tip={undo === null ? t('act.undo') : t('act.undoOf', { label: undo })}
          onClick={() => undoStep(store)}
        />
        <Button
          icon={Redo2}
          look="bare icon"
          disabled={redo === null}
          tip={redo === null ? t('act.redo') : t('act.redoOf', { label: redo })}
          onClick={() => redoStep(store)}
        />
        <LookSwitch />
        <FileMenu />
        <ExportMenu />
        <SettingsMenu />
      </div>
    </header>
  );
}

/** Screens count 96 pixels to the inch; the scale is of the drawing as it stands there. */
function scaleText(pixelsPerMm: number): string {
  const ratio = 96 / MM_PER_INCH / pixelsPerMm;
  return ratio >= 1 ? `1 : ${numberText(ratio, ratio < 10 ? 1 : 0)}` : `${numberText(1 / ratio, 1)} : 1`;
}

/** A face with its rim, folded out a little: our own sign. */
function Mark() {
  return (
    <svg viewBox="0 0 28 28" width="26" height="26" aria-hidden="true" className="mark-sign">
      <path d="M4 3h14v22H4z" fill="none" stroke="currentColor" strokeWidth="2" />
      <path d="M8 8h6M8 12.5h6M8 17h6" stroke="currentColor" strokeWidth="2" />
      <path
        d="M18 3l6 4v22l-6-4"
        fill="var(--tape)"
        stroke="currentColor"
        strokeWidth="2"
        strokeLinejoin="round"
      />
    </svg>
  );
}

/** The design's name, changed where it stands. */
function NameCell({ value, onCommit }: { value: string; onCommit: (name: string) => void }) {
  const t = useWords();
  const read = (text: string): Read<string, object> => ({ ok: true, value: text.trim() });
  const draft = useDraft<string, object>({ shown: value, read, onCommit });
  return (
    <div className="cell name-cell">
      <label className="caption" htmlFor="design-name">
        {t('title.design')}
      </label>
      <input id="design-name" maxLength={200} autoComplete="off" {...draft.input} />
    </div>
  );
}
