import { ShoppingCart } from 'lucide-react';
import { boughtSaying } from '../../../job/acts.ts';
import type { Plan, ShoppingLine } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { type PaneSay, useSay } from '../../control/useSay.ts';
import { usePlan, useStore } from '../../state/hooks.ts';
import { atSaw, sayOfJob } from '../../state/job.ts';
import { useWords } from '../../words/t.ts';
import { ScrollBox } from '../facts/ScrollBox.tsx';
import '../../words/sawWords.ts';
import '../../style/work.css';

/** Everything to get, counter by counter, with the total. */
export function Shopping({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const { shopping } = plan;
  if (shopping.length === 0) return <p className="note">{t('shop.none')}</p>;
  const kinds = [...new Set(shopping.map((line) => line.kind))];
  const unpriced = shopping.filter((line) => !line.priced).length;
  return (
    <Section id="wood-shopping" title="wood.shopping">
      <ScrollBox label={t('wood.shopping')}>
        <table className="figures shopping">
          <caption className="hidden-text">{t('wood.shopping')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('shop.what')}</th>
              <th scope="col">{t('shop.size')}</th>
              <th scope="col">{t('shop.count')}</th>
              <th scope="col" className="each">
                {t('shop.each')}
              </th>
              <th scope="col">{t('stock.price')}</th>
            </tr>
          </thead>
          {kinds.map((kind) => (
            <tbody key={kind}>
              <tr>
                <th scope="rowgroup" colSpan={5} className="kind-row">
                  {say.words.shopping[kind]}
                </th>
              </tr>
              {shopping
                .filter((line) => line.kind === kind)
                .map((line, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: one stock may be bought in several lengths
                  <Line key={`${line.item}|${i}`} line={line} say={say} plan={plan} />
                ))}
            </tbody>
          ))}
          <tfoot>
            <tr>
              <th scope="row" colSpan={3}>
                {t('shop.total')}
              </th>
              <td className="each" />
              <td>{say.money(plan.total)}</td>
            </tr>
          </tfoot>
        </table>
      </ScrollBox>
      {unpriced > 0 ? <p className="note">{t('shop.without', { count: unpriced })}</p> : null}
      <p className="note">{t('shop.pricesHint')}</p>
    </Section>
  );
}

function Line({ line, say, plan }: { line: ShoppingLine; say: PaneSay; plan: Plan }) {
  const t = useWords();
  return (
    <tr>
      <th scope="row">
        <Typeset text={line.name} />
        <Bought line={line} say={say} plan={plan} />
      </th>
      <Typeset as="td" text={sizeOf(line, say)} />
      <td>{line.count}</td>
      <td className="each">{line.owned || !line.priced ? '' : say.money(line.each)}</td>
      <td>
        {line.owned ? (
          <span className="good-text">{t('shop.owned')}</span>
        ) : (
          priceOf(line, say, t('shop.unpriced'))
        )}
      </td>
    </tr>
  );
}

/** Boards and sheets that are there need not be bought, and stay what they are whatever is planned. */
function Bought({ line, say, plan }: { line: ShoppingLine; say: PaneSay; plan: Plan }) {
  const t = useWords();
  const store = useStore();
  const { stale } = usePlan();
  const { kind, item, size, owned, name, count } = line;
  const { length_mm: length, width_mm: width } = size;
  if (owned || stale || length === undefined || (kind !== 'board' && kind !== 'sheet')) return null;
  const said = boughtSaying({ stock: item, length, width }, atSaw(plan, plan.design));
  // What is bought to spare is no board of the plan.
  if (said.length !== count || name !== plan.stocks.get(item)?.name) return null;
  const what = `${count} × ${name}, ${sizeOf(line, say)}`;
  return (
    <Button
      icon={ShoppingCart}
      look="bare bought"
      label={t('shop.boughtLong', { what })}
      onClick={() => sayOfJob(store, said, t('shop.bought', { what }))}
    >
      {t('shop.isBought')}
    </Button>
  );
}

/** A price, or a word for one that nobody entered. */
const priceOf = (line: ShoppingLine, say: PaneSay, unpriced: string): string =>
  line.priced ? say.money(line.price) : unpriced;

function sizeOf({ kind, size }: ShoppingLine, say: PaneSay): string {
  if (kind === 'tape' && size.length_mm !== undefined) return say.far(size.length_mm);
  if (size.volume_l !== undefined) return say.volume(size.volume_l);
  const sides = [size.length_mm, size.width_mm].flatMap((mm) => (mm === undefined ? [] : say.short(mm)));
  const pieces = size.pieces === undefined ? [] : [say.words.pieces(size.pieces)];
  return [...(sides.length > 0 ? [sides.join(' × ')] : []), ...pieces].join(', ');
}
