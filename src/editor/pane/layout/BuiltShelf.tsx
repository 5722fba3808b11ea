import { useRef } from 'react';
import { ASSEMBLIES, ASSEMBLY_NAMES, type AssemblyName } from '../../../design/assembly/table.ts';
import { newDesign } from '../../../design/defaults.ts';
import { applyEdits } from '../../../design/edit/edit.ts';
import type { Design } from '../../../design/schema.ts';
import { under } from '../../../list/at.ts';
import { remembering } from '../../../plan/memory.ts';
import { useRoving } from '../../control/list/rove.ts';
import { PartShapes } from '../../control/PartShapes.tsx';
import { shownFrom } from '../../document/shown.ts';
import { createAssembly } from '../../edit/built.ts';
import { placeInMiddle } from '../../gesture/draw.ts';
import { startPlacing } from '../../gesture/place.ts';
import { useEditor, useSettledDesign, useStore } from '../../state/hooks.ts';
import { builtTool } from '../../state/tools.ts';
import { useWords } from '../../words/t.ts';
import { useLifting } from './useLifting.ts';
import '../../style/built.css';

/** Doors, windows and such, each with its picture: one is chosen, and drawn on the face as a part is. */
export function BuiltShelf() {
  const t = useWords();
  const store = useStore();
  const tool = useEditor((s) => s.tool);
  const list = useRef<HTMLDivElement>(null);
  const roving = useRoving(list, 'both');
  useLifting(list);
  return (
    <div ref={list} role="toolbar" className="builts" aria-label={t('built.title')} {...roving}>
      {ASSEMBLY_NAMES.map((name) => {
        const own = builtTool(name);
        return (
          <button
            key={name}
            type="button"
            data-stop=""
            className="kind built"
            aria-pressed={tool === own}
            onPointerDown={(e) => startPlacing(store, own, undefined, e.nativeEvent)}
            onClick={(e) => {
              // A key cannot draw: it places one of usual size.
              if (e.detail === 0) placeInMiddle(store, own);
            }}
          >
            <BuiltPicture name={name} />
            <span>{t(`built.${name}`)}</span>
          </button>
        );
      })}
    </div>
  );
}

/** Around what is drawn: its outline is cut otherwise. */
const AROUND = 8;

/** An assembly of usual size, drawn from its own layout in the colors of the design. */
function BuiltPicture({ name }: { readonly name: AssemblyName }) {
  const { bed, stocks, finishes, measure } = useSettledDesign();
  const { size, parts } = under(PICTURED, name)(bed, stocks, finishes, measure);
  return (
    <svg
      viewBox={`${-AROUND} ${-AROUND} ${size.w + 2 * AROUND} ${size.h + 2 * AROUND}`}
      preserveAspectRatio="xMidYMid meet"
      aria-hidden="true"
    >
      <g transform={`translate(0 ${size.h}) scale(1 -1)`}>
        <PartShapes parts={parts} finishes={finishes} />
      </g>
    </svg>
  );
}

/** Each assembly laid out, kept while the pane is away: it goes and comes with every selection. */
const PICTURED = new Map(
  ASSEMBLY_NAMES.map((name) => [
    name,
    remembering((...[bed, stocks, finishes, measure]: Shape) => {
      const bare: Design = { ...newDesign(bed), stocks, finishes, measure };
      const size = ASSEMBLIES[name].usual;
      const made = applyEdits(bare, createAssembly(bare, name, { x: 0, y: 0, ...size }).edits);
      return { parts: made.ok ? shownFrom(made.design).layout.parts : [], size };
    }),
  ]),
);

/** What of a design shows in the pictures. */
type Shape = [Design['bed'], Design['stocks'], Design['finishes'], Design['measure']];
