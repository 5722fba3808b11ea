import { Plus } from 'lucide-react';
import { leastCorners, MOST_CORNERS } from '../../../design/limits.ts';
import type { Part } from '../../../design/schema.ts';
import { midpoint, subtract } from '../../../geometry/point.ts';
import type { Box, Point } from '../../../geometry/shape.ts';
import type { Mm } from '../../../measure/units.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { MeasureField } from '../../control/MeasureField.tsx';
import { Remove } from '../../control/Remove.tsx';
import { commitCorners } from '../../edit/cornerActs.ts';
import {
  addedCorner,
  type Corners,
  cornersOf,
  joinedAs,
  madeCorner,
  movedCorner,
  withoutCorner,
} from '../../edit/corners.ts';
import { useEditor, useStore } from '../../state/hooks.ts';
import { t, useWords } from '../../words/t.ts';
import { MADE_FIELDS, madeOf } from './madeFields.ts';
import { usePart } from './usePart.ts';

/** Whether a run comes back to where it starts. */
const PATH_FIELDS: readonly FormField<Corners, Corners>[] = [
  {
    is: 'switch',
    label: 'corners.closed',
    get: ({ closed }) => closed,
    put: (closed, corners) =>
      closed && corners.points.length < leastCorners(true) ? null : joinedAs(corners, closed),
  },
];

/** Corners of a drawn outline or of a run's own path, as measures from the lower left of the box. */
export function CornerFields({ part }: { part: Part }) {
  const store = useStore();
  const { box } = usePart(part);
  const corners = cornersOf(part, box);
  return corners ? (
    <OutlineFields
      corners={corners}
      box={box}
      name={part.name}
      opening={null}
      path={part.kind === 'run'}
      onTake={(next, label) => commitCorners(store, { part, box, opening: null }, next, label)}
    />
  ) : null;
}

interface OutlineFieldsProps {
  readonly corners: Corners;
  readonly box: Box;
  readonly name: string;
  /** The opening whose outline it is; null: that of the part itself. */
  readonly opening: string | null;
  /** It may be left open. */
  readonly path?: boolean;
  readonly onTake: (next: Corners, label: string) => void;
}

export function OutlineFields({ corners, box, name, opening, path, onTake: take }: OutlineFieldsProps) {
  useWords();
  const store = useStore();
  const chosen = useEditor((s) => (s.opening === opening ? s.corner : null));
  const { points, closed } = corners;
  const one = chosen !== null && chosen < points.length ? chosen : 0;
  const measure = (index: number, axis: 'x' | 'y', mm: number) => {
    const at = points[index];
    if (!at) return;
    take(
      movedCorner(corners, index, { ...at, [axis]: box[axis] + mm }),
      t('did.corner', { number: index + 1, name }),
    );
  };
  const add = (index: number) => {
    const [a, b] = [points[index], points[(index + 1) % points.length]];
    if (!a || !b) return;
    // After the last corner of an open path its last leg goes on by half.
    const ends = !closed && index === points.length - 1;
    const before = points[index - 1];
    const at =
      ends && before ? { x: a.x + (a.x - before.x) / 2, y: a.y + (a.y - before.y) / 2 } : midpoint(a, b);
    take(addedCorner(corners, index, at), t('did.addCorner', { number: index + 2, name }));
  };
  return (
    <fieldset className="sub corners">
      <legend>{t('corners.title')}</legend>
      <p className="note">{t('corners.hint')}</p>
      <table className="corner-table">
        <thead>
          <tr>
            <th scope="col">
              <span className="hidden-text">{t('corners.number')}</span>
            </th>
            <th scope="col">{t('part.left')}</th>
            <th scope="col">{t('part.bottom')}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {points.map((p, index) => {
            const number = index + 1;
            const fewer = withoutCorner(corners, index);
            return (
              <CornerRow
                // Corners have no names; a field keeps its place while its corner moves.
                key={`corner-${number}`}
                number={number}
                at={subtract(p, box)}
                chosen={chosen === index}
                onChoose={() => store.setState({ corner: index, opening })}
                onMeasure={(axis, mm) => measure(index, axis, mm)}
                onAdd={points.length < MOST_CORNERS ? () => add(index) : null}
                onRemove={fewer && (() => take(fewer, t('did.dropCorner', { number, name })))}
              />
            );
          })}
        </tbody>
      </table>
      {path ? (
        <Fields of={PATH_FIELDS} value={corners} onChange={(next) => take(next, t('did.change', { name }))} />
      ) : null}
      <fieldset className="sub">
        <legend>{t('corners.one', { number: one + 1 })}</legend>
        <FieldGrid
          of={MADE_FIELDS}
          value={madeOf(corners, one)}
          onChange={(made) => take(madeCorner(corners, one, made), t('did.change', { name }))}
        />
      </fieldset>
    </fieldset>
  );
}

interface CornerRowProps {
  readonly number: number;
  /** From the lower left of the box. */
  readonly at: Point;
  readonly chosen: boolean;
  readonly onChoose: () => void;
  readonly onMeasure: (axis: 'x' | 'y', mm: Mm) => void;
  /** Null: there are as many as there may be. */
  readonly onAdd: (() => void) | null;
  /** Null: fewer would be no shape. */
  readonly onRemove: (() => void) | null;
}

function CornerRow({ number, at, chosen, onChoose, onMeasure, onAdd, onRemove }: CornerRowProps) {
  useWords();
  return (
    <tr data-chosen={chosen} onFocus={onChoose}>
      <th scope="row">{number}</th>
      {(['x', 'y'] as const).map((axis) => (
        <td key={axis}>
          <MeasureField
            quiet
            label={t(axis === 'x' ? 'corners.leftOf' : 'corners.bottomOf', { number })}
            min={-10_000}
            value={at[axis]}
            onCommit={(mm) => onMeasure(axis, mm)}
          />
        </td>
      ))}
      <td className="corner-acts">
        <Button
          icon={Plus}
          look="bare icon"
          label={t('corners.add', { number })}
          disabled={onAdd === null}
          onClick={onAdd ?? undefined}
        />
        <Remove
          label={t('corners.remove', { number })}
          disabled={onRemove === null}
          onClick={onRemove ?? undefined}
        />
      </td>
    </tr>
  );
}
