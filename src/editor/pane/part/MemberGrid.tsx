import { type KeyboardEvent, useEffect, useRef } from 'react';
import { eachOf, isBoards } from '../../../design/made.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import {
  type ChosenMember,
  chooseMember,
  chosenMember,
  commitOverride,
  overrideOf,
  toggleMember,
} from '../../edit/members.ts';
import type { Many, MemberPlace } from '../../edit/places.ts';
import { useDesign, useEditor, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import '../../style/members.css';
import { MEMBER_OWN_FIELDS, type Override } from './ownFields.ts';

/** More places than this are chosen by number. */
const MOST_CELLS = 600;

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/**
 * The places of an array as on the face: each one can be left out, or have a finish or stock of its own. Those of a
 * fill lie in no grid and are chosen on the face.
 */
export function MemberGrid({ part }: { part: Many }) {
  const t = useWords();
  const store = useStore();
  useEditor((s) => s.member);
  const found = chosenMember(store.getState());
  if (!found || found.array.id !== part.id || found.grid.slots.length < 2) return null;
  const { grid, slot } = found;
  return (
    <fieldset className="sub">
      <legend>{t('array.single')}</legend>
      <p className="note">{t(isBoards(part) ? 'fill.singleHint' : 'array.singleHint')}</p>
      {isBoards(part) ? null : grid.slots.length > MOST_CELLS ? (
        <ByNumber found={found} />
      ) : (
        <Cells found={found} />
      )}
      {slot ? <OwnFields key={slot.id} found={found} slot={slot} /> : null}
    </fieldset>
  );
}

function Cells({ found }: { found: ChosenMember }) {
  const t = useWords();
  const store = useStore();
  const design = useDesign();
  const table = useRef<HTMLTableElement>(null);
  const { array, grid, slot } = found;
  const rows = Array.from({ length: grid.rows }, (_, i) => grid.rows - 1 - i);
  const reached = slot?.id ?? grid.slots[0]?.id;

  // Focus goes with the choice, but only within the grid.
  useEffect(() => {
    if (slot && table.current?.contains(document.activeElement))
      table.current.querySelector<HTMLElement>('[aria-pressed=true]')?.focus();
  }, [slot]);

  const onKey = (e: KeyboardEvent, at: MemberPlace) => {
    const step = STEPS[e.key];
    if (step) {
      const next = grid.slots.find((s) => s.column === at.column + step[0] && s.row === at.row + step[1]);
      if (next) chooseMember(store, next);
    } else if (e.key === 'Delete' || e.key === 'Backspace') {
      if (slot?.id !== at.id) chooseMember(store, at);
      toggleMember(store);
    } else return;
    e.preventDefault();
  };

  const cell = (at: MemberPlace) => {
    const own = overrideOf(array, at);
    const finish = design.finishes.find((f) => f.id === at.finish);
    const state = [
      own.omit ? t('array.isOut') : '',
      own.finish !== undefined ? (finish?.name ?? t('finish.bare')) : '',
      own.stock ?? '',
    ].filter(Boolean);
    return (
      <button
        type="button"
        className="member"
        data-out={own.omit ?? false}
        data-own={own.finish !== undefined || own.stock !== undefined}
        aria-pressed={at.id === slot?.id}
        aria-label={[at.name, ...state].join(', ')}
        title={[at.name, ...state].join(', ')}
        tabIndex={at.id === reached ? 0 : -1}
        style={own.omit || !finish ? undefined : { backgroundColor: finish.color }}
        onClick={() => chooseMember(store, at)}
        onKeyDown={(e) => onKey(e, at)}
      />
    );
  };

  return (
    <div className="members">
      <table ref={table} aria-label={t('array.single')}>
        <tbody>
          {rows.map((row) => (
            <tr key={row}>
              {grid.slots.slice(row * grid.columns, (row + 1) * grid.columns).map((at) => (
                <td key={at.id}>{cell(at)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface Numbered {
  readonly grid: ChosenMember['grid'];
  /** Counted from 0. */
  readonly column: number;
  readonly row: number;
}

const numberField = (of: 'column' | 'row'): FormField<Numbered, Omit<Numbered, 'grid'>> => ({
  is: 'number',
  label: `array.${of}`,
  whole: true,
  min: 1,
  max: ({ grid }) => grid[`${of}s`],
  get: (numbered) => numbered[of] + 1,
  put: (n, { column, row }) => ({ column, row, [of]: n - 1 }),
});

const NUMBER_FIELDS = [numberField('column'), numberField('row')];

/** Column and row as numbers, for arrays too large to show. */
function ByNumber({ found: { grid, slot } }: { found: ChosenMember }) {
  const store = useStore();
  const [column, row] = [slot?.column ?? 0, slot?.row ?? 0];
  return (
    <FieldGrid
      of={NUMBER_FIELDS}
      value={{ grid, column, row }}
      onChange={(to) =>
        chooseMember(store, grid.slots.find((s) => s.column === to.column && s.row === to.row) ?? null)
      }
    />
  );
}

/** What the chosen member has of its own. */
function OwnFields({ found, slot }: { found: ChosenMember; slot: MemberPlace }) {
  const store = useStore();
  const member = eachOf(found.array);
  const own = overrideOf(found.array, slot);
  return (
    <>
      <p className="member-name">{slot.name}</p>
      <FieldGrid
        of={MEMBER_OWN_FIELDS}
        value={{ own, member }}
        onChange={(change: Override) => commitOverride(store, found, slot, { ...own, ...change })}
      />
    </>
  );
}
