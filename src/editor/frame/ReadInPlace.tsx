import { Ruler, Undo2 } from 'lucide-react';
import { useEffect, useId, useState } from 'react';
import { isStraight } from '../../design/reading.ts';
import type { TapeRead } from '../../design/schema.ts';
import { type PieceAsRead, pieceAsRead, plannedEdges } from '../../joinery/asRead.ts';
import type { Piece } from '../../joinery/piece.ts';
import { designPart } from '../../layout/reference.ts';
import type { Mm } from '../../measure/units.ts';
import { followWords, readWords } from '../../plan/words/tape.ts';
import { Button } from '../control/Button.tsx';
import { FieldGrid } from '../control/form/Fields.tsx';
import { type FormField, named } from '../control/form/formField.ts';
import { Typeset } from '../control/Typeset.tsx';
import { useSay } from '../control/useSay.ts';
import { type LegOfRun, longSide, readingEdits, readingOfAll, takesReading } from '../edit/reading.ts';
import { useCommit, usePlan, useSettled, useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { changesLayout, type LayoutChange, layoutChange } from './layoutChange.ts';
import { MovedList } from './MovedList.tsx';

/** What was typed, beside what was planned. */
interface Draft {
  readonly planned: Record<'left' | 'right', Mm>;
  readonly read: { readonly left?: Mm; readonly right?: Mm; readonly diagonal?: Mm };
  readonly slant: TapeRead['slant'];
  readonly moves: TapeRead['moves'];
  readonly of: Mm;
  readonly width: Mm;
  /** Nothing but the piece follows what is read of a length of a run. */
  readonly leg: LegOfRun | null;
  /** Others of a row that are cut like it. */
  readonly alike: readonly string[];
  readonly all: boolean;
  /** Null where no piece can be so. */
  readonly comes: PieceAsRead | null;
}

const edgeField = (side: 'left' | 'right'): FormField<Draft> => ({
  is: 'length',
  label: `read.${side}`,
  min: 1,
  // What was not read is shown as it would be by what was.
  get: ({ read, comes, planned }) => read[side] ?? comes?.[side] ?? planned[side],
  put: (mm, { read }) => ({ read: { ...read, [side]: mm } }),
});

/** Across the piece, as it would be by its edges and angles. */
function diagonalOf({ comes, planned, width }: Draft): Mm {
  if (!comes) return Math.hypot(planned.right, width);
  return Math.hypot(comes.right + width * Math.tan((-comes.miters[0] * Math.PI) / 180), width);
}

const FIELDS: readonly FormField<Draft>[] = [
  edgeField('left'),
  edgeField('right'),
  {
    is: 'length',
    label: 'read.diagonal',
    hint: 'read.diagonalHint',
    place: 'wide',
    min: 1,
    get: (draft) => draft.read.diagonal ?? diagonalOf(draft),
    put: (diagonal, { read }) => ({ read: { ...read, diagonal } }),
  },
  {
    is: 'choice',
    label: 'read.slant',
    field: 'slant',
    place: 'wide',
    of: named('read.slant', ['end', 'start', 'both']),
    when: ({ read }) => read.left !== undefined && read.right !== undefined && read.diagonal === undefined,
  },
  {
    is: 'choice',
    label: 'read.moves',
    field: 'moves',
    place: 'wide',
    of: named('read.moves', ['end', 'start', 'nothing']),
    when: ({ leg }) => leg === null,
  },
  {
    is: 'switch',
    label: 'read.all',
    hint: 'read.allHint',
    field: 'all',
    place: 'wide',
    when: ({ alike }) => alike.length > 0,
  },
];

function readOf({
  planned,
  read,
  slant,
  moves,
  of,
}: Pick<Draft, 'planned' | 'read' | 'slant' | 'moves' | 'of'>): TapeRead {
  const edge = (side: 'left' | 'right') => {
    const mm = read[side];
    return mm === undefined ? {} : { [side]: { planned: planned[side], read: mm } };
  };
  const { diagonal } = read;
  return {
    ...edge('left'),
    ...edge('right'),
    ...(diagonal === undefined ? {} : { diagonal }),
    slant,
    moves,
    of,
  };
}

interface ReadInPlaceProps {
  readonly piece: Piece;
  /** Told where a card is of several pieces. */
  readonly name?: string | undefined;
  /** Where no drawing shows what would move. */
  readonly unseen?: boolean;
}

/** A piece that is cut to fit: what the tape reads where it is to go, and what follows from that. */
export function ReadInPlace({ piece, name, unseen = false }: ReadInPlaceProps) {
  const t = useWords();
  const say = useSay();
  const shown = useSettled();
  const commit = useCommit();
  const { stale } = usePlan();
  const [open, setOpen] = useState(false);
  const { read, allowance } = piece.fit;
  const rough = t('wood.inPlace', { allowance: say.short(allowance) });
  if (!takesReading(piece, shown)) {
    return (
      <p className="warn-text">
        <Typeset text={rough} />
      </p>
    );
  }
  const called = say.name(piece.part);
  const { tape } = say.words;
  const leg = legOf(piece, shown.layout.parts) ?? undefined;
  const back = () =>
    commit(readingEdits(shown.design, piece.part, undefined, leg), t('did.readBack', { name: called }));
  return (
    <section className="in-place" aria-label={t('read.of', { name: called })}>
      {name ? <h4>{name}</h4> : null}
      <p className={read ? 'in-place-told' : 'warn-text'} role="status">
        <Typeset
          text={
            read
              ? sentence(
                  readWords(piece, tape, say.measure),
                  followWords(piece.part, shown.layout, tape, say.name),
                )
              : rough
          }
        />
      </p>
      {open ? (
        <ReadForm piece={piece} unseen={unseen} onDone={() => setOpen(false)} />
      ) : (
        <div className="btn-row">
          <Button icon={Ruler} disabled={stale} onClick={() => setOpen(true)}>
            {t(read ? 'read.again' : 'read.enter')}
          </Button>
          {read ? (
            <Button icon={Undo2} look="bare" disabled={stale} onClick={back}>
              {t('read.back')}
            </Button>
          ) : null}
        </div>
      )}
    </section>
  );
}

/** Parts of a sentence as one. */
function sentence(...parts: readonly string[]): string {
  const text = parts.filter((part) => part !== '').join('; ');
  return `${text.charAt(0).toLocaleUpperCase()}${text.slice(1)}.`;
}

/** What is typed is shown as a piece at once; what else it moves is asked about before it is taken. */
function ReadForm({ piece, unseen, onDone }: { piece: Piece; unseen: boolean; onDone: () => void }) {
  const t = useWords();
  const say = useSay();
  const shown = useSettled();
  const commit = useCommit();
  const { stale, plan } = usePlan();
  const title = useId();
  const [typed, setTyped] = useState<Partial<Draft>>({});
  const draft = draftOf(piece, typed, shown.layout.parts, plan?.joinery.pieces ?? []);
  const { asked, ask, drop } = useFollowers();
  if (!draft) return null;
  const called = say.name(piece.part);
  const { comes } = draft;
  const some = Object.values(draft.read).some((mm) => mm !== undefined);
  const { alike, all, leg } = draft;
  const edits = all
    ? readingOfAll(shown.design, [piece.part, ...alike], readOf(draft))
    : readingEdits(shown.design, piece.part, readOf(draft), leg ?? undefined);
  const keep = () => {
    drop();
    onDone();
    commit(edits, t('did.read', { name: called }));
  };
  if (asked)
    return (
      <MovedList
        design={shown.design}
        change={asked}
        label={called}
        drop="read.drop"
        unseen={unseen}
        onKeep={keep}
        onDrop={drop}
      />
    );
  const take = () => {
    const [edit] = edits;
    if (edit?.kind !== 'replace' || edit.list !== 'parts') return;
    const parts = shown.design.parts.map((part) => (part.id === edit.id ? edit.item : part));
    if (!ask(layoutChange(shown, { parts } as Parameters<typeof layoutChange>[1]))) keep();
  };
  return (
    <form
      className="in-place-form"
      aria-labelledby={title}
      onSubmit={(e) => {
        e.preventDefault();
        take();
      }}
    >
      <h4 id={title}>{t('read.title')}</h4>
      <p className="note">{t(`read.lies.${liesOf(piece, shown.layout.parts)}`)}</p>
      <FieldGrid of={FIELDS} value={draft} onChange={(change) => setTyped({ ...typed, ...change })} />
      <p className={comes ? 'in-place-comes' : 'warn-text'} role="status">
        <Typeset text={comes ? comesWords() : t('read.no', { width: say.short(piece.width) })} />
      </p>
      <div className="btn-row">
        <Button look="main" disabled={!some || !comes || stale} onClick={take}>
          {t('read.take')}
        </Button>
        <Button onClick={onDone}>{t('read.drop')}</Button>
      </div>
    </form>
  );

  function comesWords(): string {
    if (!comes) return '';
    const angle = (deg: number) => (Math.abs(deg) < 0.005 ? t('wood.endSquare') : say.angle(Math.abs(deg)));
    return t('read.comes', {
      left: say.short(comes.left),
      right: say.short(comes.right),
      start: angle(comes.miters[0]),
      end: angle(comes.miters[1]),
    });
  }
}

type Parts = ReturnType<typeof useSettled>['layout']['parts'];

function liesOf(piece: Piece, parts: Parts): 'up' | 'across' | 'turned' {
  const laid = parts.find(({ id }) => id === piece.part);
  const lie = laid && isStraight(laid) ? laid.spec.lie : 'turned';
  return lie === 'up' || lie === 'across' ? lie : 'turned';
}

/** The straight length of a run that a piece is, and of how many. */
function legOf({ part, leg }: Piece, parts: Parts): LegOfRun | null {
  const laid = parts.find(({ id }) => id === part);
  return laid && 'legs' in laid && leg !== undefined ? { leg, legs: laid.legs.length } : null;
}

/** Other pieces of the same row that are marked like it. */
function alikeIn(piece: Piece, pieces: readonly Piece[]): string[] {
  const row = designPart(piece.part);
  return row === piece.part
    ? []
    : pieces.flatMap((one) =>
        one.part !== piece.part && one.label === piece.label && designPart(one.part) === row ? one.part : [],
      );
}

function draftOf(piece: Piece, typed: Partial<Draft>, parts: Parts, pieces: readonly Piece[]): Draft | null {
  const planned = plannedEdges(piece);
  const laid = parts.find(({ id }) => id === piece.part);
  if (!planned || !laid) return null;
  const was = piece.fit.read;
  const { left, right, diagonal } = was ?? {};
  const draft = {
    planned,
    width: piece.width,
    of: was?.of ?? longSide(laid, liesOf(piece, parts)),
    leg: legOf(piece, parts),
    alike: alikeIn(piece, pieces),
    all: false,
    slant: was?.slant ?? ('end' as const),
    moves: was?.moves ?? (legOf(piece, parts) ? ('nothing' as const) : ('end' as const)),
    read: {
      ...(left && { left: left.read }),
      ...(right && { right: right.read }),
      ...(diagonal !== undefined && { diagonal }),
    },
    ...typed,
  };
  return { ...draft, comes: pieceAsRead(piece, readOf(draft)) };
}

/** What a reading would move is asked about while the drawing shows it; what moves nothing is not. */
function useFollowers() {
  const store = useStore();
  const settled = useSettled();
  const [question, setQuestion] = useState<{
    readonly change: LayoutChange;
    readonly from: typeof settled;
  } | null>(null);
  const asked = question?.from === settled ? question.change : null;
  useEffect(() => {
    if (!asked) return;
    store.setState({ provisional: { shown: asked.shown, guides: [], live: false } });
    return () => store.setState({ provisional: null });
  }, [asked, store]);
  return {
    asked,
    /** Whether there is anything to ask. */
    ask: (change: LayoutChange): boolean => {
      if (!changesLayout(change)) return false;
      setQuestion({ change, from: settled });
      return true;
    },
    drop: () => setQuestion(null),
  };
}
