import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { solidBehind } from '../../src/bed/solidBehind.ts';
import { areaOf } from '../../src/geometry/region.ts';
import { inches } from '../../src/measure/units.ts';
import { sampleBed } from './sample.ts';

const inInches = (mm: number) => mm / 25.4;
const boardsByName = (bed: ReturnType<typeof sampleBed>) =>
  new Map(faceOf(bed).face.boards.map((b) => [b.name, b]));

describe('corner laps (common practice, no source)', () => {
  it('a rail that runs past two 1 1/2 in boards is 3 in longer than the platform: 75 gives 78', () => {
    const boards = boardsByName(sampleBed());
    expect(inInches(boards.get('side rail')?.length ?? 0)).toBeCloseTo(78, 9);
    expect(inInches(boards.get('end rail')?.length ?? 0)).toBeCloseTo(38.5, 9);
  });

  it('ends that run past leave side rails of the platform length', () => {
    const bed = sampleBed();
    const boards = boardsByName({ ...bed, frame: { ...bed.frame, runsPast: 'ends' } });
    expect(inInches(boards.get('side rail')?.length ?? 0)).toBeCloseTo(75, 9);
    expect(inInches(boards.get('end rail')?.length ?? 0)).toBeCloseTo(41.5, 9);
  });

  it('cleats between two others of 1 1/2 in on a 38 1/2 in platform are 35 1/2 in', () => {
    const boards = boardsByName(sampleBed());
    expect(inInches(boards.get('end cleat')?.length ?? 0)).toBeCloseTo(35.5, 9);
    expect(inInches(boards.get('side cleat')?.length ?? 0)).toBeCloseTo(75, 9);
  });

  it('a 5 in mattress on a platform 3 1/2 in below the top stands 1 1/2 in proud', () => {
    const { face } = faceOf(sampleBed());
    expect(inInches(face.platformBelowTop)).toBeCloseTo(3.5, 9);
    expect(inInches(face.mattressProud)).toBeCloseTo(1.5, 9);
  });
});

describe('levels', () => {
  it('gives rim, ledge and field of the recessed underside, by hand', () => {
    const { face, checks } = faceOf(sampleBed());
    expect(checks).toEqual([]);
    expect([inInches(face.width), inInches(face.height)].map((v) => +v.toFixed(9))).toEqual([41.5, 78]);
    const [rim, ledge, field] = face.levels;
    expect(face.levels.map((l) => l.id)).toEqual(['rim', 'ledge', 'field']);
    expect(face.levels.map((l) => +inInches(l.z).toFixed(9))).toEqual([0, -1.75, -3.25]);
    expect(face.levels.map((l) => +inInches(l.behind).toFixed(9))).toEqual([7.25, 2, 0.5]);
    expect(rim?.inner).toEqual(ledge?.box);
    expect(ledge?.inner).toEqual(field?.box);
    expect(inInches(field?.box.w ?? 0)).toBeCloseTo(35.5, 9);
    expect(inInches(field?.box.h ?? 0)).toBeCloseTo(72, 9);
  });

  it('a side-pivoted bed lies lengthwise: the same face on its side, the same boards', () => {
    const upright = faceOf(sampleBed()).face;
    const lying = faceOf(sampleBed({ pivotAlong: 'side' })).face;
    expect([lying.width, lying.height]).toEqual([upright.height, upright.width]);
    expect(lying.boards).toEqual(upright.boards);
  });

  it('a skin is one level in front of the frame', () => {
    const skin = { thickness: inches(0.25), material: 'plywood' };
    const { face } = faceOf(sampleBed({ skin }));
    expect(face.levels.map((l) => [l.id, l.z, inInches(l.behind)])).toEqual([['skin', 0, 0.25]]);
    expect(inInches(face.frameDepth)).toBeCloseTo(7.5, 9);
  });

  it('levels tile the face without gap or overlap', () => {
    const width = fc.double({ min: 200, max: 2500, noNaN: true });
    const board = fc.double({ min: 10, max: 60, noNaN: true });
    fc.assert(
      fc.property(width, width, board, board, (w, l, t, c) => {
        const bed = sampleBed();
        const { face } = faceOf({
          ...bed,
          mattress: { ...bed.mattress, width: w, length: l },
          frame: { ...bed.frame, thickness: t },
          cleats: { ...bed.cleats, width: c },
        });
        const sum = face.levels.reduce((a, level) => a + areaOf(level.region), 0);
        expect(sum / (face.width * face.height)).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('measures that cannot be', () => {
  const whats = (bed: ReturnType<typeof sampleBed>) =>
    faceOf(bed)
      .checks.filter((c) => c.code === 'bed.no-room')
      .map((c) => [c.figures.what, +inInches(Number(c.figures.size_mm)).toFixed(6)]);

  it('cleats below the frame lower edge', () => {
    const bed = sampleBed();
    expect(whats({ ...bed, cleats: { ...bed.cleats, depth: inches(3.5) } })).toEqual([['cleats', -0.25]]);
  });

  it('a platform below the frame lower edge', () => {
    const bed = sampleBed();
    const checks = whats({ ...bed, cleats: { ...bed.cleats, below: inches(8) } });
    expect(checks[0]).toEqual(['platform', -0.75]);
  });

  it('no opening between the cleats: the level is left out, the face still comes', () => {
    const bed = sampleBed();
    const wide = { ...bed, cleats: { ...bed.cleats, width: inches(20) } };
    expect(whats(wide)).toEqual([['field', -1.5]]);
    expect(faceOf(wide).face.levels.map((l) => l.id)).toEqual(['rim', 'ledge']);
  });

  it('legs set farther from the end than the bed is long', () => {
    const bed = sampleBed();
    expect(whats({ ...bed, legs: { ...bed.legs, fromEnd: inches(77) } })).toEqual([['legs', -1]]);
  });

  it('legs that do not bring the face level: 14 in pivot, 3 in behind the face, want 11 in', () => {
    const bed = sampleBed();
    const { checks } = faceOf({ ...bed, legs: { ...bed.legs, length: inches(10) } });
    expect(checks.map((c) => [c.code, c.severity])).toEqual([['bed.legs', 'warning']]);
    expect(inInches(Number(checks[0]?.figures.needed_mm))).toBeCloseTo(11, 9);
  });
});

describe('wood behind a point', () => {
  const at = (bed: ReturnType<typeof sampleBed>, x: number, y: number) =>
    +inInches(solidBehind(faceOf(bed).face, bed, { x: inches(x), y: inches(y) })).toFixed(9);

  it('rim, ledge, field, and nothing beside the face', () => {
    const bed = sampleBed();
    expect(at(bed, 0.75, 30)).toBe(7.25);
    expect(at(bed, 2, 30)).toBe(2);
    expect(at(bed, 20, 30)).toBe(0.5);
    expect(at(bed, -0.1, 30)).toBe(0);
  });

  it('takes the lesser depth on the line between two boards', () => {
    expect(at(sampleBed(), 1.5, 30)).toBe(2);
    expect(at(sampleBed(), 3, 30)).toBe(0.5);
  });

  it('a skin carries on into the frame, and into cleats only where they touch it', () => {
    const skin = { thickness: inches(0.25), material: 'plywood' };
    const hollow = sampleBed({ skin });
    expect([at(hollow, 0.75, 30), at(hollow, 2, 30), at(hollow, 20, 30)]).toEqual([7.5, 0.25, 0.25]);
    const cleats = { ...hollow.cleats, depth: inches(3.25) };
    const touching = { ...hollow, cleats };
    expect([at(touching, 2, 30), at(touching, 20, 30)]).toEqual([0.25 + 3.25 + 0.5, 0.25]);
  });

  it('is what each level says, all over the level', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 0, max: 2 }), (t, k) => {
        const bed = sampleBed();
        const { face } = faceOf(bed);
        const level = face.levels[k];
        if (!level) throw new Error('no level');
        // Along the middle of the level's left band, away from the lines between boards.
        const right = level.inner ? level.inner.x : level.box.x + level.box.w;
        const x = (level.box.x + right) / 2;
        const y = level.box.y + 1 + t * (level.box.h - 2);
        expect(solidBehind(face, bed, { x, y })).toBe(level.behind);
      }),
    );
  });
});
