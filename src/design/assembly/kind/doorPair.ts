import { inches } from '../../../measure/units.ts';
import { GROUND } from '../building.ts';
import { facing } from '../facing.ts';
import { framed } from '../framing.ts';
import { kindOf } from '../kind.ts';
import { knob } from '../knob.ts';
import { lockRailOf, paneled } from '../paneling.ts';
import { inHalfOf, stock, yes } from '../question.ts';
import { moldingOf } from '../stock.ts';
import { DOOR_QUESTIONS, panelsOf } from './panelDoor.ts';

/** Two leaves that meet in the middle, a bead over the joint between them. */
export const doorPair = kindOf({
  usual: { w: inches(30), h: inches(40) },
  questions: {
    ...inHalfOf(DOOR_QUESTIONS),
    knobs: yes(true),
    bead: stock('shaped', (_, has) => moldingOf(has, 'half-round', 'half-round-20')),
  },
  make: (b, answers) => {
    const panels = panelsOf(answers);
    facing(b, 'leaf', answers);
    const all = b.within(GROUND);
    const middle = b.edge(GROUND, 'mid');
    const halves = { left: { ...all, right: middle }, right: { ...all, left: middle } };
    for (const leaf of ['left', 'right'] as const) {
      const on = b.on(leaf);
      paneled(on, framed(on, halves[leaf], answers), panels);
    }
    b.strip('bead', 'meeting-bead', 'up', {
      stock: answers.bead,
      finish: answers.finish,
      on: b.on('left').id('stile-right'),
    });
    b.center('bead', 'x', middle, middle);
    b.between('bead', 'y', all.bottom, all.top);
    if (!answers.knobs) return;
    const lockRail = lockRailOf(panels.rows);
    const [left, right] = [b.on('left'), b.on('right')];
    knob(left, 'stile-right', lockRail, [left.edge('stile-right', 'low'), b.edge('bead', 'low')]);
    knob(right, 'stile-left', lockRail, [b.edge('bead', 'high'), right.edge('stile-left', 'high')]);
  },
});
