import { isBought } from '../../../design/made.ts';
import { isSingle } from '../../../layout/place/body.ts';
import { isRepeatable } from '../../edit/member.ts';
import { useDesign, useSelection } from '../../state/hooks.ts';
import { ArrangeSection } from './ArrangeSection.tsx';
import { DivideSection } from './DivideSection.tsx';
import { GroupFields } from './GroupFields.tsx';
import { KeepClearFields } from './KeepClearFields.tsx';
import { PartActs } from './PartActs.tsx';
import { PartChecks } from './PartChecks.tsx';
import { PartFields } from './PartFields.tsx';
import { RepeatSection } from './RepeatSection.tsx';
import { RuleList } from './RuleList.tsx';
import { SelectionSize } from './SelectionSize.tsx';

/** Everything about what is selected, as fields and sentences. */
export function Inspector() {
  const design = useDesign();
  const selection = useSelection();
  const [only] = selection;
  if (selection.length !== 1 || only === undefined) {
    return (
      <div className="inspector">
        <PartActs />
        <SelectionSize />
        <ArrangeSection />
        <DivideSection />
      </div>
    );
  }
  const part = design.parts.find((p) => p.id === only);
  const keep = design.keepClears.find((k) => k.id === only);
  const group = design.groups.find((g) => g.id === only);
  return (
    <div className="inspector" key={only}>
      <PartActs />
      {part ? (
        <>
          <PartFields part={part} />
          <PartChecks part={part.id} />
          <RuleList part={part} />
          <ArrangeSection />
          {isRepeatable(part) ? <RepeatSection part={part} /> : null}
          {isBought(part) || !isSingle(part) ? null : <DivideSection />}
        </>
      ) : null}
      {keep ? <KeepClearFields keep={keep} /> : null}
      {group ? <GroupFields group={group} /> : null}
    </div>
  );
}
