import { quadThrough } from '../../../geometry/ring.ts';
import type { Quad } from '../../../geometry/shape.ts';
import { pick } from '../../../list/at.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import type { Size } from '../../photo/placing.ts';
import { useWords } from '../../words/t.ts';

const CORNERS = ['lowerLeft', 'lowerRight', 'upperRight', 'upperLeft'] as const;

interface QuadFieldsProps {
  readonly quad: Quad;
  readonly size: Size;
  readonly onCommit: (quad: Quad) => void;
}

interface Cornered {
  readonly at: Quad[number];
  readonly size: Size;
}

const field = (
  label: 'photo.across' | 'photo.down',
  axis: 'x' | 'y',
  side: keyof Size,
): FormField<Cornered, Partial<Quad[number]>> => ({
  is: 'share',
  label,
  max: 100,
  get: ({ at, size }) => at[axis] / size[side],
  put: (share, { size }) => ({ [axis]: share * size[side] }),
});

const FIELDS = [field('photo.across', 'x', 'width'), field('photo.down', 'y', 'height')];

/** Where the photo shows the bed's corners, as shares of the photo from its upper left. */
export function QuadFields({ quad, size, onCommit }: QuadFieldsProps) {
  const t = useWords();
  return CORNERS.map((corner, index) => (
    <fieldset key={corner} className="sub">
      <legend>{t(`photo.corner.${corner}`)}</legend>
      <FieldGrid
        of={FIELDS}
        value={{ at: pick(quad, index), size }}
        onChange={(to) => onCommit(quadThrough(quad, (p, i) => (i === index ? { ...p, ...to } : p)))}
      />
    </fieldset>
  ));
}
