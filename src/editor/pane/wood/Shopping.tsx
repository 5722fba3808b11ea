import { ShoppingCart, Undo2 } from 'lucide-react';
import { liveFacts, type Saying } from '../../../design/job/record.ts';
import { boughtSaying } from '../../../job/acts.ts';
import { gotSaying } from '../../../job/bought.ts';
import type { Plan, ShoppingLine } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { type PaneSay, useSay } from '../../control/useSay.ts';
import { usePlan, useStore } from '../../state/hooks.ts';
import { atSaw, sayOfJob, takeBackOfJob } from '../../state/job.ts';
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
          <span className="good-text">{t(line.got ? 'shop.got' : 'shop.owned')}</span>
        ) : (
          priceOf(line, say, t('shop.unpriced'))
        )}
      </td>
    </tr>
  );
}

/** What is there need not be bought, and stays what it is whatever is planned; who said so by mistake takes it back. */
function Bought({ line, say, plan }: { line: ShoppingLine; say: PaneSay; plan: Plan }) {
  const t = useWords();
  const store = useStore();
  const { stale } = usePlan();
  const { owned, name, count, got } = line;
  if (stale) return null;
  const what = [`${count} × ${name}`, sizeOf(line, say)].filter((text) => text !== '').join(', ');
  if (got && got.ids.size > 0) {
    return (
      <Button
        icon={Undo2}
        look="bare bought"
        label={t('shop.notBoughtLong', { what })}
        onClick={() => takeBackOfJob(store, got.ids, t('shop.tookBack', { what }))}
      >
        {t('shop.notBought')}
      </Button>
    );
  }
  const said = owned ? [] : sayingOf(line, plan);
  if (said.length === 0) return null;
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

/** What is said where all of a line is bought. */
function sayingOf(line: ShoppingLine, plan: Plan): readonly Saying[] {
  const { kind, item, size, count, spare } = line;
  const { length_mm: length, width_mm: width } = size;
  const { finishes, job } = plan.design;
  if (kind !== 'board' && kind !== 'sheet')
    return gotSaying(line, { facts: liveFacts(job), finishes, spare: spare === true });
  if (length === undefined || spare) return [];
  const said = boughtSaying({ stock: item, length, width }, atSaw(plan, plan.design));
  return said.length === count ? said : [];
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
