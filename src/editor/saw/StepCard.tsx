import type { BenchStep } from '../../cutting/atSaw.ts';
import { fencedFrom, wayOf } from '../../cutting/sheets/way.ts';
import { cornersToMark, otherEdge } from '../../joinery/lengths.ts';
import type { Piece } from '../../joinery/piece.ts';
import type { Plan } from '../../plan/types.ts';
import { curveWords, tapeWords } from '../../plan/words/tape.ts';
import { fromName } from '../control/stepName.ts';
import { Typeset } from '../control/Typeset.tsx';
import type { PaneSay } from '../control/useSay.ts';
import { ReadInPlace } from '../frame/ReadInPlace.tsx';
import { useWords } from '../words/t.ts';
import { BoardMap } from './BoardMap.tsx';
import { EndCards } from './EndCards.tsx';
import { PieceFigure } from './PieceFigure.tsx';
import { SheetMap } from './SheetMap.tsx';

interface StepProps<S extends BenchStep = BenchStep> {
  readonly step: S;
  readonly plan: Plan;
  readonly say: PaneSay;
}

interface Named {
  /** Of pieces, by their ids. */
  readonly names: ReadonlyMap<string, string>;
}

/** One thing to do at the saw. */
export function StepCard({ step, names, ...rest }: StepProps & Named) {
  return step.kind === 'sheet-cut' ? (
    <SheetCutCard step={step} {...rest} />
  ) : (
    <PieceCard step={step} names={names} {...rest} />
  );
}

type PieceStep = Exclude<BenchStep, { kind: 'sheet-cut' }>;

function PieceCard({ step, plan, names, say }: StepProps<PieceStep> & Named) {
  const t = useWords();
  const { piece } = step;
  const sheet = piece.form === 'sheet';
  const other = otherEdge(piece);
  const curved = curveWords(piece, say.words.tape, say.measure);
  return (
    <article className="saw-card">
      <header className="saw-what">
        <span className="saw-label">{piece.label}</span>
        <div>
          <h2>{names.get(piece.id)}</h2>
          <Typeset as="p" className="note" text={plan.stocks.get(piece.stock)?.name ?? piece.stock} />
        </div>
      </header>
      <p className="saw-figure">
        <Typeset text={say.short(piece.shown.length)} />
        {sheet ? (
          <span className="saw-by">
            × <Typeset text={say.short(piece.shown.width)} />
          </span>
        ) : null}
      </p>
      <p className="saw-under">{tapeWords(piece, say.words.tape)}</p>
      {curved === '' ? null : <Typeset as="p" className="saw-warn" text={curved} />}
      <dl className="saw-facts">
        {other ? (
          <div>
            <dt>{say.words.tape.edge[other.edge]}</dt>
            <Typeset as="dd" text={say.short(other.shown)} />
          </div>
        ) : null}
        <div>
          <dt>{t(sheet ? 'size.thickness' : 'bench.section')}</dt>
          <Typeset
            as="dd"
            text={
              sheet ? say.short(piece.thickness) : `${say.short(piece.width)} × ${say.short(piece.thickness)}`
            }
          />
        </div>
      </dl>
      {piece.fit.inPlace ? <ReadInPlace key={piece.id} piece={piece} unseen /> : null}
      <PieceFigure piece={piece} say={say} />
      <Corners piece={piece} say={say} />
      {sheet ? <Sawing piece={piece} /> : <EndCards piece={piece} say={say} />}
      <From step={step} plan={plan} say={say} />
    </article>
  );
}

/** Where the corners lie that edges and angles do not place. */
function Corners({ piece, say }: { piece: Piece; say: PaneSay }) {
  const t = useWords();
  const corners = cornersToMark(piece);
  if (corners.length === 0) return null;
  return (
    <section className="saw-corners">
      <h3>{t('wood.corners')}</h3>
      <ul>
        {corners.map(({ x, y }) => (
          <Typeset
            as="li"
            key={`${x} ${y}`}
            text={t('wood.cornerAt', { along: say.short(x), across: say.short(y) })}
          />
        ))}
      </ul>
    </section>
  );
}

/** What is left to do with a piece of sheet after the straight cuts. */
function Sawing({ piece }: { piece: Piece }) {
  const t = useWords();
  const shaped = piece.outline.length !== 4;
  const holes = piece.holes.length > 0;
  if (!shaped && !holes) return null;
  return (
    <p className="saw-warn">{t(shaped ? (holes ? 'bench.outlineHoles' : 'bench.outline') : 'bench.holes')}</p>
  );
}

/** Which board or sheet the piece comes from, and where on it. */
function From({ step, plan, say }: StepProps<PieceStep>) {
  const t = useWords();
  if (step.kind === 'loose-piece') return <p className="saw-warn">{t('bench.notOnBoard')}</p>;
  if (step.kind === 'board-piece') {
    return (
      <section className="saw-from">
        <WoodHead from={step.from} say={say} />
        <BoardMap step={step} plan={plan} />
        <p className="saw-place">
          <Typeset text={t('bench.fromTo', { from: say.short(step.cut.from), to: say.short(step.cut.to) })} />
          <span className="note">{t('bench.along')}</span>
        </p>
        {step.cut.flipped ? <p className="note">{t('bench.turned')}</p> : null}
      </section>
    );
  }
  const { place } = step;
  return (
    <section className="saw-from">
      <WoodHead from={step.from} say={say} />
      <SheetMap sheet={step.from.wood} plan={plan} marked={{ piece: place.piece }} what={step.piece.label} />
      <p className="saw-place">
        <Typeset text={t('bench.onSheet', { x: say.short(place.x), y: say.short(place.y) })} />
        {place.turned ? <span className="note">{t('bench.quarter')}</span> : null}
      </p>
    </section>
  );
}

function WoodHead({ from, say }: { from: NonNullable<BenchStep['from']>; say: PaneSay }) {
  const t = useWords();
  const { wood } = from;
  const length = say.short(wood.length);
  return (
    <h3>
      {fromName(from, t)}
      <span className="note">
        <Typeset text={'width' in wood ? `${length} × ${say.short(wood.width)}` : length} />
        {wood.owned === null ? null : `, ${t('bench.owned')}`}
      </span>
    </h3>
  );
}

function SheetCutCard({ step, plan, say }: StepProps<Extract<BenchStep, { kind: 'sheet-cut' }>>) {
  const t = useWords();
  const { cut, from } = step;
  const stock = plan.stocks.get(from.wood.stock);
  return (
    <article className="saw-card">
      <header className="saw-what">
        <span className="saw-label">{cut.number}</span>
        <div>
          <h2>{t(wayOf(cut) === 'rip' ? 'bench.rip' : 'bench.cross')}</h2>
          <Typeset as="p" className="note" text={stock?.name ?? from.wood.stock} />
        </div>
      </header>
      <Typeset as="p" className="saw-figure" text={say.short(cut.fence)} />
      <p className="saw-under">
        {t('bench.fence')}: {t('bench.fenceHint', { edge: t(`bench.edge.${fencedFrom(cut)}`) })}
      </p>
      <section className="saw-from">
        <WoodHead from={from} say={say} />
        <SheetMap
          sheet={from.wood}
          plan={plan}
          marked={{ cut }}
          what={t('bench.cutNumber', { number: cut.number })}
        />
        <Typeset
          as="p"
          className="saw-place"
          text={t('bench.cutOf', { w: say.short(cut.of.w), h: say.short(cut.of.h) })}
        />
      </section>
    </article>
  );
}
