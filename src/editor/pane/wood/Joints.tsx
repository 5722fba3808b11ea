import type { Joint } from '../../../design/schema.ts';
import type { JointFound } from '../../../joinery/piece.ts';
import type { Plan } from '../../../plan/types.ts';
import { freeId } from '../../action/ids.ts';
import { ChoiceField } from '../../field/ChoiceField.tsx';
import { useCommit, useSettledDesign, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { showParts } from '../facts/showPlace.ts';
import { useSay } from '../facts/useSay.ts';

const KINDS = ['miter', 'butt', 'cope', 'half-lap'] as const satisfies readonly JointFound['kind'][];

/** The part of the design behind a laid part. */
const partOf = (laid: string): string => laid.replace(/\[.*$/, '');

interface Pair {
  readonly a: string;
  readonly b: string;
  readonly joints: readonly JointFound[];
}

/** How parts meet; the proposal can be changed for every pair of parts. */
export function Joints({ plan }: { plan: Plan }) {
  const t = useWords();
  const pairs = pairsOf(plan.joinery.joints);
  if (pairs.length === 0) return <p className="note">{t('joints.none')}</p>;
  return (
    <section aria-labelledby="wood-joints">
      <h3 id="wood-joints" className="section-title">
        {t('wood.joints')} <span className="count">{plan.joinery.joints.length}</span>
      </h3>
      <p className="note">{t('joints.lead')}</p>
      <ul className="item-list joints">
        {pairs.map((pair) => (
          <JointRow key={`${pair.a}|${pair.b}`} pair={pair} />
        ))}
      </ul>
    </section>
  );
}

/** Joints between the same two parts together: what is decided for one is decided for all of them. */
function pairsOf(joints: readonly JointFound[]): Pair[] {
  const pairs = new Map<string, Pair & { joints: JointFound[] }>();
  for (const joint of joints) {
    const [a = '', b = ''] = joint.parts.map(partOf).sort();
    const key = `${a}|${b}`;
    const known = pairs.get(key);
    if (known) known.joints.push(joint);
    else pairs.set(key, { a, b, joints: [joint] });
  }
  return [...pairs.values()];
}

function JointRow({ pair }: { pair: Pair }) {
  const t = useWords();
  const say = useSay();
  const store = useStore();
  const design = useSettledDesign();
  const commit = useCommit();
  const { a, b, joints } = pair;
  const [first] = joints;
  if (!first) return null;
  const decided = joints.some((j) => j.decided);
  const name =
    a === b ? t('joints.corner', { a: say.name(a) }) : t('joints.pair', { a: say.name(a), b: say.name(b) });
  const through = first.through === null ? null : partOf(first.through);

  const decide = (kind: Joint['kind'] | null, by: string | null) => {
    const before = design.joints.filter((j) => {
      const [p, q] = j.parts.map(partOf).sort();
      return p === a && q === b;
    });
    const removed = before.map((j) => ({ kind: 'remove', list: 'joints', id: j.id }) as const);
    const item: Joint | null = kind && {
      id: freeId(design, 'joint'),
      parts: [a, b],
      kind,
      ...(by !== null && (kind === 'butt' || kind === 'cope') ? { through: by } : {}),
    };
    commit(
      [...removed, ...(item ? [{ kind: 'insert', list: 'joints', item } as const] : [])],
      t('did.change', { name }),
    );
  };

  return (
    <li>
      <div className="item-head">
        <button
          type="button"
          className="link"
          aria-label={t('joints.show', { pair: name })}
          onClick={() => showParts(store, [a, b], first.at)}
        >
          {name}
        </button>
        {joints.length > 1 ? (
          <span className="note">{t('joints.count', { count: joints.length })}</span>
        ) : null}
      </div>
      <div className="fields">
        <ChoiceField
          quiet
          label={t('joints.kind', { pair: name })}
          value={decided ? first.kind : 'auto'}
          choices={[
            {
              value: 'auto' as const,
              label: decided
                ? t('joints.asProposed')
                : t('joints.proposed', { kind: t(`joint.${first.kind}`) }),
            },
            ...KINDS.map((value) => ({ value, label: t(`joint.${value}`) })),
          ]}
          onCommit={(kind) => decide(kind === 'auto' ? null : kind, through)}
        />
        {a !== b && (first.kind === 'butt' || first.kind === 'cope') ? (
          <ChoiceField
            quiet
            label={t('joints.through', { pair: name })}
            value={through ?? a}
            choices={[a, b].map((value) => ({
              value,
              label: t('joints.runsThrough', { name: say.name(value) }),
            }))}
            onCommit={(by) => decide(first.kind, by)}
          />
        ) : null}
      </div>
    </li>
  );
}
