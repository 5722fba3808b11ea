import { TriangleAlert } from 'lucide-react';
import type { Check } from '../../../check/check.ts';
import { inserting, removing } from '../../../design/edit/make.ts';
import { eachOf } from '../../../design/made.ts';
import { isBowed } from '../../../design/path.ts';
import type { Design, Joint } from '../../../design/schema.ts';
import type { Joinery, JointFound } from '../../../joinery/piece.ts';
import { designPart } from '../../../layout/reference.ts';
import type { Plan } from '../../../plan/types.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { useCheckWords } from '../../control/useCheckWords.ts';
import { useSay } from '../../control/useSay.ts';
import { freeId } from '../../edit/ids.ts';
import { useCommit, useSettledDesign, useStore } from '../../state/hooks.ts';
import { t, useWords } from '../../words/t.ts';
import { showParts } from '../facts/showPlace.ts';

const KINDS = ['miter', 'butt', 'cope', 'half-lap'] as const satisfies readonly JointFound['kind'][];

interface Pair {
  readonly a: string;
  readonly b: string;
  /** Joints in the wood; empty where the chosen one is not made. */
  readonly joints: readonly JointFound[];
  readonly chosen: Joint | null;
  /** What stands against the chosen one. */
  readonly checks: readonly Check[];
}

/** How parts meet; the proposal can be changed for every pair of parts. */
export function Joints({ plan }: { plan: Plan }) {
  useWords();
  const design = useSettledDesign();
  const pairs = pairsOf(plan.joinery, design.joints);
  if (pairs.length === 0) return <p className="note">{t('joints.none')}</p>;
  return (
    <Section id="wood-joints" title="wood.joints" count={plan.joinery.joints.length}>
      <p className="note">{t('joints.lead')}</p>
      <ul className="item-list joints">
        {pairs.map((pair) => (
          <JointRow key={`${pair.a}|${pair.b}`} pair={pair} />
        ))}
      </ul>
    </Section>
  );
}

/** Joints between the same two parts together: what is decided for one is decided for all of them. */
function pairsOf({ joints, checks }: Joinery, choices: readonly Joint[]): Pair[] {
  const pairs = new Map<
    string,
    Pair & { joints: JointFound[]; chosen: Joint | null; readonly checks: Check[] }
  >();
  const pairFor = (parts: readonly string[]) => {
    const [a = '', b = ''] = parts.map(designPart).sort();
    const key = `${a}|${b}`;
    const pair = pairs.get(key) ?? { a, b, joints: [], chosen: null, checks: [] };
    pairs.set(key, pair);
    return pair;
  };
  for (const joint of joints) pairFor(joint.parts).joints.push(joint);
  for (const choice of choices) pairFor(choice.parts).chosen = choice;
  for (const check of checks) {
    const [a = '', b = a] = check.parts;
    if (check.code === 'joint.not-made') pairFor([a, b]).checks.push(check);
  }
  return [...pairs.values()];
}

/** Kinds to choose from; the segments of a bow are mitered and nothing else. */
function kindsFor(design: Design, { a, b, chosen }: Pair): readonly Joint['kind'][] {
  const part = design.parts.find(({ id }) => id === a);
  const made = part && eachOf(part);
  if (a !== b || made?.kind !== 'run' || !isBowed(made.path)) return KINDS;
  if ('band' in made.path && made.path.band) return KINDS;
  return KINDS.filter((kind) => kind === 'miter' || kind === chosen?.kind);
}

interface Met {
  readonly pair: Pair;
  readonly kind: JointFound['kind'] | undefined;
  /** The part that runs through; null where neither does. */
  readonly through: string | null;
  readonly nameOf: (part: string) => string;
}

interface Decided {
  /** Null: as it is proposed. */
  readonly kind: Joint['kind'] | null;
  readonly by: string | null;
}

/** No kind of joint: the proposal. */
const AUTO = 'auto';

/** How the parts of a pair meet, and which of them runs through. */
const jointFields = (pairName: string): readonly FormField<Met, Decided>[] => [
  {
    is: 'choice',
    quiet: true,
    label: { name: t('joints.kind', { pair: pairName }) },
    of: ({ pair }, design) => {
      const {
        chosen,
        joints: [first],
      } = pair;
      const proposal =
        chosen || !first ? t('joints.asProposed') : t('joints.proposed', { kind: t(`joint.${first.kind}`) });
      return [
        { value: AUTO, label: proposal },
        ...kindsFor(design, pair).map((value) => ({ value, label: t(`joint.${value}`) })),
      ];
    },
    get: ({ pair }) => pair.chosen?.kind ?? AUTO,
    put: (kind: Joint['kind'] | typeof AUTO, { through }) => ({
      kind: kind === AUTO ? null : kind,
      by: through,
    }),
  },
  {
    is: 'choice',
    quiet: true,
    label: { name: t('joints.through', { pair: pairName }) },
    when: ({ pair: { a, b }, kind }) => a !== b && (kind === 'butt' || kind === 'cope'),
    of: ({ pair: { a, b }, nameOf }) =>
      [a, b].map((value) => ({ value, label: t('joints.runsThrough', { name: nameOf(value) }) })),
    get: ({ pair, through }) => through ?? pair.a,
    put: (by, { kind }) => ({ kind: kind ?? null, by }),
  },
];

function JointRow({ pair }: { pair: Pair }) {
  useWords();
  const say = useSay();
  const store = useStore();
  const design = useSettledDesign();
  const commit = useCommit();
  const message = useCheckWords(design);
  const { a, b, joints, chosen, checks } = pair;
  const [first] = joints;
  const name =
    a === b ? t('joints.corner', { a: say.name(a) }) : t('joints.pair', { a: say.name(a), b: say.name(b) });
  const by = chosen?.through ?? first?.through;
  const through = by === undefined || by === null ? null : designPart(by);
  const kind = chosen?.kind ?? first?.kind;

  const decide = (kind: Joint['kind'] | null, by: string | null) => {
    const before = design.joints.filter((j) => {
      const [p, q] = j.parts.map(designPart).sort();
      return p === a && q === b;
    });
    const removed = before.map((j) => removing('joints', j.id));
    const item: Joint | null = kind && {
      id: freeId(design, 'joint'),
      parts: [a, b],
      kind,
      ...(by !== null && a !== b && (kind === 'butt' || kind === 'cope') ? { through: by } : {}),
    };
    commit([...removed, ...(item ? [inserting('joints', item)] : [])], t('did.change', { name }));
  };

  return (
    <li>
      <div className="item-head">
        <button
          type="button"
          className="link"
          aria-label={t('joints.show', { pair: name })}
          onClick={() => showParts(store, [a, b], first?.at)}
        >
          {name}
        </button>
        {joints.length > 1 ? (
          <span className="note">{t('joints.count', { count: joints.length })}</span>
        ) : null}
      </div>
      {checks.map((check) => (
        <p key={check.figures.why} className={`check-row ${check.severity}`}>
          <TriangleAlert aria-hidden="true" />
          <span>{message(check)}</span>
        </p>
      ))}
      <FieldGrid
        of={jointFields(name)}
        value={{ pair, kind, through, nameOf: say.name }}
        onChange={(to) => decide(to.kind, to.by)}
      />
    </li>
  );
}
