import { type CSSProperties, useId } from 'react';
import colorSets from '../../../../assets/color-sets.json';
import { replacing } from '../../../design/edit/make.ts';
import type { Finish } from '../../../design/schema.ts';
import { type ColorSet, inColors, isPainted } from '../../../finish/colorSet.ts';
import { sameValue } from '../../../list/sameValue.ts';
import type { Plan } from '../../../plan/types.ts';
import { FaceMap } from '../../control/FaceMap.tsx';
import { Section } from '../../control/Section.tsx';
import { useCommit, useSettledDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { BesideButton } from '../beside/BesideButton.tsx';
import { repainted } from '../beside/repainted.ts';
import { ShownAreas } from './FinishMap.tsx';

const SETS = colorSets as readonly ColorSet[];

/** The name under which the picture asks for the color of a finish. */
const variableOf = (finishes: readonly Finish[], id: string | null): string =>
  `--set-${finishes.findIndex((finish) => finish.id === id)}`;

const colorOf = ({ color, sheen }: Finish) => ({ color, sheen });

/** The whole face in other colors, side by side; one press paints it so, and one undo takes that back. */
export function ColorSets({ plan }: { plan: Plan }) {
  const t = useWords();
  const commit = useCommit();
  const { finishes } = useSettledDesign();
  const face = useId();
  const { design } = plan;
  const tried = (set: ColorSet) => {
    const name = t(`sets.${set.id}` as WordKey);
    const other = repainted(finishes, set, name);
    const edits = other.filter(isPainted).map((item) => replacing('finishes', item));
    const style = Object.fromEntries(
      inColors(design.finishes, set)
        .filter(isPainted)
        .map(({ id, color }) => [variableOf(design.finishes, id), color]),
    ) as CSSProperties;
    return { name, isOn: sameValue(other.map(colorOf), finishes.map(colorOf)), edits, style };
  };
  return (
    <Section id="paint-sets" title="sets.title">
      <p className="note">{t('sets.lead')}</p>
      <svg className="hidden-text" aria-hidden="true">
        <defs>
          <g id={face}>
            <ShownAreas plan={plan} variable={(id) => variableOf(design.finishes, id)} />
          </g>
        </defs>
      </svg>
      <ul className="color-sets">
        {SETS.map((set) => {
          const { name, isOn, edits, style } = tried(set);
          return (
            <li key={set.id}>
              <button
                type="button"
                className="kind color-set"
                aria-pressed={isOn}
                onClick={() => commit(edits, t('did.colorSet', { name }))}
              >
                <span aria-hidden="true">
                  <FaceMap wood face={plan.face} label="">
                    <use href={`#${face}`} style={style} />
                  </FaceMap>
                </span>
                <span>{name}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <BesideButton />
    </Section>
  );
}
