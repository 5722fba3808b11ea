import { eachOf } from '../../../design/made.ts';
import type { Design, Finish } from '../../../design/schema.ts';
import { finishOver } from '../../../finish/look.ts';
import { materialsOf, stocksOf } from '../../shipped/tables.ts';
import { useWords } from '../../words/t.ts';

/** Materials that the design's parts are made of, in the order of the table. */
function woodsOf(design: Design) {
  const stocks = stocksOf(design);
  const used = new Set(
    design.parts.flatMap((part) => {
      const made = eachOf(part);
      return 'stock' in made ? (stocks.get(made.stock)?.material ?? []) : [];
    }),
  );
  return [...materialsOf().values()].filter((m) => used.has(m.id));
}

/** The color beside a finish's name: its own, or for a clear coat the first wood that it shows. */
export const chipOf = (finish: Finish, design: Design): string =>
  finish.kind === 'clear' ? (woodsOf(design)[0]?.color ?? finish.color) : finish.color;

/** What a finish that lets the wood through looks like on each wood of the design. */
export function OnWoods({ finish, design }: { finish: Finish; design: Design }) {
  const t = useWords();
  const woods = woodsOf(design);
  return (
    <div className="on-woods">
      <p className="field-hint">{t(finish.kind === 'stain' ? 'finish.stainHint' : 'finish.clearHint')}</p>
      {woods.length > 0 ? (
        <ul className="legend" aria-label={t('finish.onWoods')}>
          {woods.map((wood) => (
            <li key={wood.id}>
              <span
                className="chip large"
                style={{ background: finishOver(finish, wood.color) }}
                aria-hidden="true"
              />
              {wood.name}
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
