import { BLEED, POUNCE } from '../../../design/defaults.ts';
import type { Edit } from '../../../design/edit/edit.ts';
import { isSheet } from '../../../design/made.ts';
import type { LetteredPart, Lettering } from '../../../design/schema.ts';
import type { SignPlan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { stocksOf } from '../../shipped/tables.ts';
import { t, useWords } from '../../words/t.ts';
import { stockChoices } from '../facts/choices.ts';
import { Photos } from './Photos.tsx';
import type { LetteringFieldsProps } from './TextFields.tsx';

const MAKES = ['trace', 'pounce', 'stencil', 'mirrored', 'cut-out', 'printed'] as const;
/** No stock has an id without letters. */
const AS_THE_SIGN = '';

const STENCIL_FIELDS: readonly FormField<Lettering['stencil']>[] = [
  { is: 'length', label: 'stencil.bridgeWidth', field: 'bridgeWidth', min: 0.2 },
  { is: 'number', label: 'stencil.bridges', field: 'bridges', whole: true, min: 1, max: 8 },
  {
    is: 'choice',
    label: 'stencil.direction',
    field: 'direction',
    of: named('stencil.direction', ['thinnest', 'up', 'across']),
  },
  { is: 'length', label: 'stencil.tongue', field: 'tongue' },
  { is: 'length', label: 'stencil.frame', field: 'frame' },
];

interface Made {
  readonly lettering: Lettering;
  readonly sign: SignPlan | undefined;
  readonly board: LetteredPart;
}

const MAKE_FIELDS: readonly FormField<Made, Partial<Lettering>>[] = [
  {
    is: 'choice',
    label: 'letters.makeBy',
    of: named('make', MAKES),
    hintOf: ({ lettering: { make }, sign }) => t(`make.${make}Hint`, { count: sign?.cutOuts.length ?? 0 }),
    get: ({ lettering }) => lettering.make,
    put: (make: Lettering['make']) => ({ make }),
  },
  {
    is: 'length',
    label: 'pounce.spacing',
    hint: 'pounce.spacingHint',
    min: 1,
    when: ({ lettering }) => lettering.make === 'pounce',
    get: ({ lettering }) => lettering.pounce ?? POUNCE,
    put: (pounce) => ({ pounce }),
  },
  {
    is: 'length',
    label: 'printed.bleed',
    hint: 'printed.bleedHint',
    when: ({ lettering }) => lettering.make === 'printed',
    get: ({ lettering }) => lettering.bleed ?? BLEED,
    put: (bleed) => ({ bleed }),
  },
  {
    is: 'choice',
    label: 'letters.sawnFrom',
    hint: 'letters.sawnFromHint',
    when: ({ lettering }) => lettering.make === 'cut-out',
    of: ({ lettering, board }, design) => {
      const own = isSheet(board) ? board.stock : null;
      const sheet = own === null ? t('letters.noneYet') : (stocksOf(design).get(own)?.name ?? own);
      return [
        { value: AS_THE_SIGN, label: own === null ? sheet : t('letters.asTheSign', { sheet }) },
        ...stockChoices(design, ['sheet'], lettering.stock ?? own ?? AS_THE_SIGN),
      ];
    },
    get: ({ lettering }) => lettering.stock ?? AS_THE_SIGN,
    put: (stock) => ({ stock: stock === AS_THE_SIGN ? undefined : stock }),
  },
];

interface MakeFieldsProps extends LetteringFieldsProps {
  /** A change that needs others before it, all in one step. */
  readonly onChangeAfter: (more: readonly Edit[], fields: Partial<Lettering>) => void;
  readonly sign: SignPlan | undefined;
  readonly board: LetteredPart;
}

/** How the letters get onto the board. */
export function MakeFields({ lettering, onChange, sign, board, onChangeAfter }: MakeFieldsProps) {
  useWords();
  const { make, stencil, photos = [] } = lettering;
  const put = (fields: Partial<Lettering['stencil']>) => onChange({ stencil: { ...stencil, ...fields } });
  return (
    <>
      <Fields of={MAKE_FIELDS} value={{ lettering, sign, board }} onChange={onChange} />
      {make === 'printed' || photos.length > 0 ? (
        <Photos
          lying={photos}
          placed={sign?.photos ?? []}
          onChange={(next, more = []) =>
            onChangeAfter(more, { photos: next.length === 0 ? undefined : next })
          }
        />
      ) : null}
      {make === 'stencil' ? (
        <Section id="stencil-title" title="stencil.title">
          {sign ? <Held sign={sign} /> : null}
          <FieldGrid three of={STENCIL_FIELDS} value={stencil} onChange={put} />
          {stencil.placed.length > 0 ? (
            <div className="btn-row spaced">
              <p className="note">{t('stencil.byHand', { count: stencil.placed.length })}</p>
              <Button onClick={() => put({ placed: [] })}>{t('stencil.reset')}</Button>
            </div>
          ) : null}
        </Section>
      ) : null}
    </>
  );
}

/** Whether the stencil holds together, as it was proved on its polygons. */
function Held({ sign }: { sign: SignPlan }) {
  useWords();
  const made = sign.stencils?.layers.map((l) => l.stencil) ?? [];
  const sum = (pick: (stencil: (typeof made)[number]) => number) =>
    made.reduce((total, one) => total + pick(one), 0);
  const loose = sum((s) => s.loose);
  const single = sum((s) => s.single);
  if (made.length === 0) return null;
  return (
    <div className="held-facts">
      {loose === 0 ? (
        <p className="good-text">
          {t('stencil.holds', {
            islands: sum((s) => s.islands.length),
            bridges: sum((s) => s.bridges.length),
          })}
        </p>
      ) : (
        <p className="bad-text">{t('stencil.loose', { loose })}</p>
      )}
      {single > 0 ? <p className="warn-text">{t('stencil.single', { count: single })}</p> : null}
    </div>
  );
}
