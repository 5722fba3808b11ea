import { describe, expect, it } from 'vitest';
import type { Bed } from '../../src/bed/bed.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import type { FoldInput } from '../../src/fold/body.ts';
import { planFold } from '../../src/fold/planFold.ts';
import { sideView } from '../../src/fold/sideView.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { degrees, inches } from '../../src/measure/units.ts';
import { sampleBed } from '../bed/sample.ts';
import { blockInInches } from '../bed/solids.ts';

/*
 * The sample bed in inches: pivot 14 above the floor, 9 from the wall, 3 behind the face and 4 above its
 * lower edge; face 41 1/2 x 78; frame 7 1/4 deep; mattress 1 1/2 proud; ceiling 96. From the pivot, the
 * face's top is 74 up and its lower edge 4 down; the frame's back is 4 1/4 behind.
 */
const input = (solids: readonly Solid[] = [], bed: Bed = sampleBed(), more: Partial<FoldInput> = {}) => ({
  bed,
  face: faceOf(bed).face,
  keepClears: [],
  solids,
  ...more,
});
const inInches = (mm: number) => mm / 25.4;

describe('the bare bed, by hand', () => {
  // In each test, so that a throw fails it instead of the whole file.
  const bare = () => planFold(input());

  it('ceiling: the back top corner of the frame turns over its own radius', () => {
    const fold = bare();
    expect(inInches(fold.ceilingClear)).toBeCloseTo(96 - 14 - Math.hypot(74, 4.25), 9);
    expect(fold.at.ceiling).toBeCloseTo(degrees(Math.atan2(4.25, 74)), 9);
    expect(fold.closest.ceiling).toBe('bed:frame');
  });

  it('floor: lowered, the face lies 11 above it', () => {
    const fold = bare();
    expect(inInches(fold.floorClear)).toBeCloseTo(14 - Math.hypot(4, 3), 9);
    expect(fold.at.floor).toBeCloseTo(degrees(Math.atan2(3, 4)), 9);
  });

  it('wall: the mattress back lower corner', () => {
    const fold = bare();
    // Mattress: 5 3/4 behind the pivot, its lower end 2 1/2 below it.
    const mattress = 9 - Math.hypot(2.5, 5.75);
    const frame = 9 - Math.hypot(4, 4.25);
    expect(inInches(fold.wallClear)).toBeCloseTo(Math.min(mattress, frame), 9);
    expect(fold.closest.wall).toBe('bed:mattress');
  });

  it('needs floor as far as the feet of the legs and the top edge sweep', () => {
    const fold = bare();
    // Feet: 72 above the lower edge less 4 = 68 up, 11 + 3 out; top edge: 74 up, 3 out.
    expect(inInches(fold.floorSpace)).toBeCloseTo(9 + Math.max(Math.hypot(68, 14), Math.hypot(74, 3)), 9);
  });

  it('hits nothing and has no checks', () => {
    const fold = bare();
    expect(fold.hits).toEqual([]);
    expect(fold.checks).toEqual([]);
    expect(fold.wallBoardClear).toBeNull();
  });
});

describe('the wall board counts like floor, wall and ceiling', () => {
  it('its angle and what comes closest are told', () => {
    const fold = planFold(input([], sampleBed({ wallBoard: { thickness: inches(1), height: inches(8) } })));
    expect(fold.wallBoardClear).toBeGreaterThan(0);
    expect(fold.closest.wallBoard).toMatch(/^bed:/);
    expect(fold.at.wallBoard).toBeGreaterThanOrEqual(0);
    expect(fold.at.wallBoard).toBeLessThanOrEqual(90);
  });

  it('is the tightest position where it is touched', () => {
    // The mattress, 5 3/4 behind the pivot, stands 3 1/4 from the wall when stowed.
    const board = { thickness: inches(4), height: inches(40) };
    const fold = planFold(input([], sampleBed({ wallBoard: board })));
    expect(fold.hits.map((h) => h.what)).toContain('wall-board');
    expect(fold.wallBoardClear).toBe(0);
    expect([fold.floorClear, fold.wallClear, fold.ceilingClear].every((clear) => clear > 0)).toBe(true);
    expect(fold.worst).toBe(fold.at.wallBoard);
  });

  it('has no angle where there is none', () => {
    const fold = planFold(input());
    expect([fold.wallBoardClear, fold.at.wallBoard, fold.closest.wallBoard]).toEqual([null, null, null]);
  });
});

describe('hand-worked hits', () => {
  it('a skirt 12 below the pivot meets a wall 9 behind it', () => {
    const fold = planFold(input([blockInInches('skirt', [0, -8, 41.5, 8], [0, 0.75])]));
    expect(fold.hits).toHaveLength(1);
    const [hit] = fold.hits;
    expect([hit?.part, hit?.what]).toEqual(['skirt', 'wall']);
    // Its back lower corner, 12 down and 3 out: 9 - 12 sin a + 3 cos a = 0.
    const first = degrees(Math.asin(9 / Math.hypot(12, 3)) + Math.atan2(3, 12));
    expect(hit?.angle).toBeCloseTo(first, 9);
    expect(inInches(fold.wallClear)).toBeCloseTo(-3, 9);
    expect(fold.at.wall).toBe(90);
    expect(inInches(hit?.shorter ?? 0)).toBeCloseTo(3, 6);
    expect(hit?.thinner).toBeNull();
    expect(hit?.place.x).toBeCloseTo(0, 9);
    expect(fold.checks.map((c) => [c.code, c.severity, c.parts])).toEqual([
      ['fold.hits-wall', 'error', ['skirt']],
    ]);
    const [check] = fold.checks;
    const figures = check?.figures ?? {};
    expect([inInches(check?.at?.x ?? 0), inInches(check?.at?.y ?? 0)]).toEqual([20.75, -4]);
    expect(Object.keys(figures)).toEqual(['over_mm', 'angle_deg', 'what', 'shorter_mm']);
    expect(inInches(Number(figures.shorter_mm))).toBeCloseTo(3, 6);
    expect(inInches(Number(figures.over_mm))).toBeCloseTo(3, 6);
    expect([figures.what, figures.angle_deg]).toEqual(['wall', hit?.angle]);
  });

  it('a cornice 12 above the free end meets the ceiling while stowed', () => {
    const fold = planFold(input([blockInInches('cornice', [0, 78, 41.5, 12], [0, 3])]));
    const [hit] = fold.hits;
    expect([hit?.part, hit?.what, hit?.angle]).toEqual(['cornice', 'ceiling', 0]);
    // Stowed it reaches 14 + 74 + 12 = 100 under a ceiling of 96.
    expect(inInches(fold.ceilingClear)).toBeCloseTo(-4, 9);
    expect(inInches(hit?.over ?? 0)).toBeCloseTo(4, 6);
    expect(fold.checks[0]?.code).toBe('fold.hits-ceiling');
  });

  it('a cornice that stands free when stowed meets the ceiling as it turns', () => {
    // Top 81.9 up from the pivot, back 5 behind it: radius 82.05, but only 82 to the ceiling.
    const fold = planFold(input([blockInInches('cornice', [0, 78, 41.5, 7.9], [-8, 0])]));
    const [hit] = fold.hits;
    const first = degrees(Math.atan2(5, 81.9) - Math.acos(82 / Math.hypot(81.9, 5)));
    expect(hit?.angle).toBeCloseTo(first, 7);
    expect(first).toBeGreaterThan(1);
    expect(inInches(fold.ceilingClear)).toBeCloseTo(82 - Math.hypot(81.9, 5), 9);
    // Short enough when its back corner lies on the circle of radius 82.
    expect(inInches(hit?.shorter ?? 0)).toBeCloseTo(81.9 - Math.sqrt(82 ** 2 - 5 ** 2), 6);
    expect(hit?.place.y).toBeCloseTo(inches(96), 8);
  });

  it('a handle that stands lower than the legs', () => {
    const fold = planFold(input([blockInInches('handle', [18, 69, 6, 1], [0, 11.5])]));
    expect(fold.hits.map((h) => [h.what, +inInches(h.over).toFixed(6)])).toEqual([
      ['floor', 0.5],
      ['legs', 0.5],
    ]);
    expect(inInches(fold.floorClear)).toBeCloseTo(-0.5, 9);
    expect(inInches(fold.hits[0]?.thinner ?? 0)).toBeCloseTo(0.5, 6);
    // Lowered, its outer face lies 14 - 11 1/2 - 3 high; its middle 69 1/2 - 4 out from a pivot 9 from the wall.
    const legs = fold.hits[1];
    expect([inInches(legs?.place.x ?? 0), inInches(legs?.place.y ?? 0)]).toEqual([
      expect.closeTo(74.5, 9),
      expect.closeTo(-0.5, 9),
    ]);
    expect([legs?.angle, legs?.thinner, legs?.shorter]).toEqual([90, legs?.over, null]);
    // Told once.
    expect(fold.checks.map((c) => c.code)).toEqual(['fold.hits-legs']);
    expect(fold.checks[0]?.figures.over_mm).toBeCloseTo(inches(0.5), 9);
  });

  it('a part below the pivot must stay within the circle that touches the floor', () => {
    // Lower edge 10 below the pivot: at most sqrt(14^2 - 10^2) = 9.798 out of the pivot, so 6.798 thick.
    const fold = planFold(input([blockInInches('box', [0, -6, 41.5, 4], [0, 8])]));
    const floor = fold.hits.find((h) => h.what === 'floor');
    expect(inInches(floor?.thinner ?? 0)).toBeCloseTo(8 - (Math.sqrt(96) - 3), 6);
    // Or end 11 out at sqrt(14^2 - 11^2) = 8.660 below the pivot.
    expect(inInches(floor?.shorter ?? 0)).toBeCloseTo(10 - Math.sqrt(14 ** 2 - 11 ** 2), 6);
  });

  it('parts beside the face need the room that is there', () => {
    const bed = sampleBed({ beside: { left: inches(1), right: inches(2) } });
    const wing = blockInInches('wing', [-1.5, 10, 46, 3], [0, 0.75]);
    const fold = planFold(input([wing], bed));
    expect(fold.hits.map((h) => [h.what, +inInches(h.over).toFixed(9)])).toEqual([
      ['side-left', 0.5],
      ['side-right', 1],
    ]);
    // Stowed, its middle 11 1/2 - 4 above a pivot 14 high, its outer face 3 3/4 out from a pivot 9 from the wall.
    for (const { place, shorter, thinner, over, angle } of fold.hits) {
      expect([inInches(place.x), inInches(place.y)]).toEqual([
        expect.closeTo(12.75, 9),
        expect.closeTo(21.5, 9),
      ]);
      expect([shorter, thinner, angle]).toEqual([over, null, 0]);
    }
    expect(fold.checks.map((c) => [c.code, c.figures.side])).toEqual([
      ['fold.hits-side', 'left'],
      ['fold.hits-side', 'right'],
    ]);
    expect(planFold(input([blockInInches('ok', [-1, 10, 44.5, 3], [0, 0.75])], bed)).hits).toEqual([]);
  });

  it('legs too long to lie level are a hit of their own; the check is the bed’s', () => {
    const bed = sampleBed();
    const fold = planFold(input([], { ...bed, legs: { ...bed.legs, length: inches(12) } }));
    expect(fold.hits.map((h) => [h.part, h.what, +inInches(h.over).toFixed(9)])).toEqual([
      ['bed:legs', 'floor', 1],
    ]);
    expect(fold.checks).toEqual([]);
  });

  it('a ceiling lower than the bed warns, since the bed stands', () => {
    const fold = planFold(input([], sampleBed({ ceiling: inches(85) })));
    expect(new Set(fold.checks.map((c) => `${c.code} ${c.severity}`))).toEqual(
      new Set(['fold.hits-ceiling warning']),
    );
  });

  it('tells little room before it is none', () => {
    const fold = planFold(input([blockInInches('cornice', [0, 78, 41.5, 7.9], [0, 3])]));
    expect(fold.hits).toEqual([]);
    expect(fold.checks.map((c) => [c.code, c.severity, c.parts, c.figures.what])).toEqual([
      ['fold.tight', 'warning', ['cornice'], 'ceiling'],
    ]);
    expect(inInches(Number(fold.checks[0]?.figures.clear_mm))).toBeCloseTo(0.1, 9);
  });
});

describe('wall board, by hand', () => {
  it('is nearest to the frame’s back lower corner, stowed', () => {
    // Board 3 thick and 4 3/4 high. The corner stands 9 - 4 1/4 = 4 3/4 from the wall and 14 - 4 = 10 up,
    // and moves away as the bed comes down; the rim's lower edge passes at hypot(6, 9 1/4) - 5 = 6.03.
    const bed = sampleBed({ wallBoard: { thickness: inches(3), height: inches(4.75) } });
    expect(inInches(planFold(input([], bed)).wallBoardClear ?? 0)).toBeCloseTo(Math.hypot(1.75, 5.25), 9);
  });

  it('a skirt meets the board’s corner before it would meet the wall', () => {
    const bed = sampleBed({ wallBoard: { thickness: inches(2), height: inches(12) } });
    const skirt = blockInInches('skirt', [0, -4, 41.5, 4], [0, 0.75]);
    const fold = planFold(input([skirt], bed));
    const [hit] = fold.hits;
    expect([hit?.part, hit?.what]).toEqual(['skirt', 'wall-board']);
    // Back lower corner 8 down, 3 out: first at the front plane, 9 - 8 sin a + 3 cos a = 2, where its
    // height 14 - 8 cos a - 3 sin a is still below 12.
    const a = Math.asin(7 / Math.hypot(8, 3)) + Math.atan2(3, 8);
    expect(14 - 8 * Math.cos(a) - 3 * Math.sin(a)).toBeLessThan(12);
    expect(hit?.angle).toBeCloseTo(degrees(a), 7);
    expect(fold.wallBoardClear).toBe(0);
    expect(fold.checks.map((c) => [c.code, c.figures.what])).toEqual([['fold.hits-wall', 'wall-board']]);
    // Shortened, at lowered it may just reach the front: 7 below the pivot.
    expect(inInches(hit?.shorter ?? 0)).toBeCloseTo(1, 6);
  });

  it('its corner meets the flat of a part that no corner of the part meets', () => {
    // Lowered, the skirt's back lies at 14 - 3 = 11 and reaches from 9 - 12 to 9 + 4: over the board's
    // corner (2, 11.5), with both of its ends away from the board.
    const bed = sampleBed({
      wallBoard: { thickness: inches(2), height: inches(11.5) },
      pivot: { ...sampleBed().pivot, fromWall: inches(14) },
    });
    const skirt = blockInInches('skirt', [0, -9, 41.5, 9], [0, 0.75]);
    const [hit] = planFold(input([skirt], bed)).hits;
    expect(hit?.what).toBe('wall-board');
    expect(hit?.angle).toBeLessThan(90);
  });
});

describe('keep-clears and reach', () => {
  const keepClear = {
    id: 'pull',
    name: 'pull',
    why: 'handle' as const,
    box: { x: inches(18), y: inches(69), w: inches(6), h: inches(2) },
    height: inches(2),
  };

  it('tells how high a handle is to be reached, stowed and lowered', () => {
    const { reach } = planFold(input([], sampleBed(), { keepClears: [keepClear] }));
    // Middle 70 above the lower edge: 66 above the pivot; lowered 2 + 3 below it.
    expect(reach.map((r) => [r.id, inInches(r.stowed), +inInches(r.lowered).toFixed(9)])).toEqual([
      ['pull', 80, 9],
    ]);
  });

  it('sweeps it like a part, but cannot cut it', () => {
    const tall = { ...keepClear, height: inches(12) };
    const { hits, checks } = planFold(input([], sampleBed(), { keepClears: [tall] }));
    expect(hits.map((h) => [h.part, h.what, +inInches(h.over).toFixed(9), h.thinner])).toEqual([
      ['keep:pull', 'floor', 1, null],
      ['keep:pull', 'legs', 1, null],
    ]);
    expect(checks.every((c) => c.severity === 'error')).toBe(true);
  });

  it('a latch beside the face needs its room', () => {
    const latch = {
      ...keepClear,
      id: 'latch',
      why: 'latch' as const,
      box: { ...keepClear.box, x: -inches(1) },
    };
    const bed = sampleBed({ beside: { left: inches(0.5), right: null } });
    const { hits } = planFold(input([], bed, { keepClears: [latch] }));
    expect(hits.map((h) => [h.part, h.what])).toEqual([['keep:latch', 'side-left']]);
  });
});

describe('side view', () => {
  const kindsOf = (given: FoldInput) => sideView(given, 0).map((s) => s.kind);

  it('has a skin where there is one, and what must stay clear as far as it stands out', () => {
    const skinned = sampleBed({ skin: { thickness: inches(0.25), material: 'plywood' } });
    expect(kindsOf(input([], skinned))).toContain('skin');
    expect(kindsOf(input())).not.toContain('skin');
    const keep = (why: 'leg' | 'hinge', height: number) => ({
      id: why,
      name: why,
      why,
      box: { x: inches(3), y: inches(60), w: inches(2), h: inches(4) },
      height,
    });
    const bare = kindsOf(input());
    const more = (...keepClears: FoldInput['keepClears']) =>
      kindsOf(input([], sampleBed(), { keepClears })).slice(bare.length);
    expect(more(keep('leg', 50))).toEqual(['leg']);
    expect(more(keep('hinge', 50))).toEqual(['keep-clear']);
    expect(more(keep('hinge', 0))).toEqual([]);
    const [box] = sideView(input([], sampleBed(), { keepClears: [keep('hinge', inches(2))] }), 0).slice(-1);
    const ys = (box?.points ?? []).map((p) => inInches(p.y));
    // From 60 to 64 above an edge that hangs 4 below a pivot 14 high.
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([expect.closeTo(70, 9), expect.closeTo(74, 9)]);
  });

  it('sees the mattress along the way that turns: its length upright, its width lying', () => {
    const tall = (bed: Bed) => {
      const ys =
        sideView(input([], bed), 0)
          .find((s) => s.kind === 'mattress')
          ?.points.map((p) => p.y) ?? [];
      return inInches(Math.max(...ys) - Math.min(...ys));
    };
    expect(tall(sampleBed())).toBeCloseTo(75, 9);
    expect(tall(sampleBed({ pivotAlong: 'side' }))).toBeCloseTo(38, 9);
  });

  it('draws the same bodies that are swept', () => {
    const shapes = sideView(input([blockInInches('strip', [0, 10, 41.5, 3], [0, 0.75])]), 90);
    const strip = shapes.find((s) => s.id === 'strip');
    const round = (v: number) => +inInches(v).toFixed(9);
    expect(strip?.points.map((p) => [round(p.x), round(p.y)])).toEqual([
      [15, 11],
      [15, 10.25],
      [18, 10.25],
      [18, 11],
    ]);
    expect(shapes.map((s) => s.kind)).toEqual(['frame', 'platform', 'mattress', 'leg', 'part']);
  });

  it('leaves out what has no thickness', () => {
    const painted = blockInInches('pane', [0, 10, 5, 5], [0, 0], { kind: 'painted' });
    expect(sideView(input([painted]), 0).some((s) => s.id === 'pane')).toBe(false);
  });
});
