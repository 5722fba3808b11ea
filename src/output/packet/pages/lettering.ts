import { type FeatureTag, stylisticSet } from '../../../design/features.ts';
import { featuresOfLine, fontOfLine, isBent } from '../../../design/look.ts';
import { isLettered, isPaint } from '../../../design/made.ts';
import { textTold } from '../../../design/picture.ts';
import { line, shape, text } from '../../../drawing/items.ts';
import { scaleFor } from '../../../drawing/scaleBar.ts';
import { DASH, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { boxOf, translateRegion } from '../../../geometry/region.ts';
import type { Box } from '../../../geometry/shape.ts';
import type { LaidLetters, LaidPart } from '../../../layout/laid.ts';
import { type LetterLayer, type PlacedGlyph, toldOf } from '../../../lettering/result.ts';
import { grouped } from '../../../list/grouped.ts';
import type { Mm } from '../../../measure/units.ts';
import type { SignPlan } from '../../../plan/types.ts';
import { type Block, entry, heading, held, paragraph, space, tableOf } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { viewAt } from '../view.ts';

/** Highest that a sign is drawn. */
const TALLEST: Mm = 60;
/** Beside the sign, for the heights of its baselines. */
const BESIDE: Mm = 24;
const TERM: Mm = 44;

/** Letters of a line that have one size and stand equally high. */
interface Stretch {
  readonly words: string;
  readonly capHeight: Mm;
  readonly baseline: Mm;
  readonly box: Box;
}

const boxOfAll = (glyphs: readonly PlacedGlyph[]): Box =>
  boxOf(glyphs.flatMap((glyph) => glyph.region)) ?? { x: 0, y: 0, w: 0, h: 0 };

/** Every line, then its letters of other sizes, each with where it stands. */
function stretchesOf({ plan }: Packet, { lettered }: SignPlan): Stretch[] {
  return lettered.text.split('\n').flatMap((words, number): Stretch[] => {
    const groups = grouped(
      lettered.glyphs.filter((one) => one.line === number),
      ({ capHeight, baseline }) => `${capHeight.toFixed(2)} ${baseline.toFixed(2)}`,
    );
    const [most, ...others] = [...groups.values()].sort((a, b) => b.length - a.length);
    const stretch = (told: string, glyphs: readonly PlacedGlyph[]): Stretch[] => {
      const [first] = glyphs;
      if (!first) return [];
      const { capHeight, baseline } = first;
      return [{ words: told, capHeight, baseline, box: boxOfAll(glyphs) }];
    };
    return [
      ...stretch(words, most ?? []),
      ...others.flatMap((glyphs) =>
        stretch(textTold(glyphs.map((g) => g.character).join(''), plan.design.pictures), glyphs),
      ),
    ];
  });
}

/** The edges that lettering is found from: those of its board, or, where it has none, of the face. */
function edgesOf({ plan: { face } }: Packet, { at, lettered }: SignPlan, laid: LaidPart): Box {
  const edges = isPaint(laid) ? face.box : boxOf(laid.region);
  return edges ? { ...edges, x: edges.x - at.x, y: edges.y - at.y } : lettered.box;
}

/** The sign to scale, its baselines carried out to the left with their heights over its lower edge. */
function picture(packet: Packet, sign: SignPlan, laid: LaidLetters, width: Mm): Block {
  const { plan } = packet;
  const colors = new Map(plan.design.finishes.map((f) => [f.id, f.color]));
  const board = translateRegion(laid.region, -sign.at.x, -sign.at.y);
  const all = [...board, ...sign.lettered.layers.flatMap((layer) => layer.whole)];
  const model = boxOf(all) ?? { x: 0, y: 0, w: 1, h: 1 };
  const scale = scaleFor(model, { w: width - BESIDE, h: TALLEST }, packet.unit);
  const height = model.h / scale + 8;
  const edge = edgesOf(packet, sign, laid);
  const baselines = new Map(
    stretchesOf(packet, sign).map(({ baseline }) => [packet.told(baseline - edge.y), baseline]),
  );
  return {
    height,
    draw: (at) => {
      const room = { x: at.x, y: at.y - height, w: width, h: height };
      const view = viewAt(model, room, scale, { left: BESIDE, right: 0, top: 4, bottom: 4 });
      const outline = { stroke: INK.line, width: WEIGHT.fine };
      let lowest = Infinity;
      const marks = [...baselines]
        .sort(([, a], [, b]) => b - a)
        .flatMap(([told, baseline]) => {
          const from = view.to({ x: model.x, y: baseline });
          const to = view.to({ x: model.x + model.w, y: baseline });
          const own = line({ x: from.x - 3, y: from.y }, to, {
            stroke: INK.soft,
            width: WEIGHT.thin,
            dash: DASH.center,
          });
          // Heights that lie close go without a figure here: the table tells them.
          if (lowest - from.y < TEXT.small * 1.2) return [own];
          lowest = from.y;
          const words = { x: from.x - 4, y: from.y - TEXT.small * 0.36 };
          return [own, text(words, told, { size: TEXT.small, anchor: 'end' })];
        });
      return [
        shape(pathOfRegion(view.region(board)), {
          ...outline,
          fill: plan.looks.parts.get(sign.id) ?? INK.paper,
          fillRule: 'evenodd',
        }),
        ...sign.lettered.layers.map((layer) =>
          shape(pathOfRegion(view.region(layer.region)), {
            stroke: INK.line,
            width: WEIGHT.hair,
            fill: colors.get(layer.finish) ?? INK.paper,
            fillRule: 'evenodd',
          }),
        ),
        ...marks,
      ];
    },
  };
}

function roleIn({ terms: { lettering } }: Packet, role: LetterLayer['role']): string {
  const { of, number } = toldOf(role);
  if (of === 'picture') return lettering.ofPicture(number);
  return number === 0 ? lettering.role[of] : lettering.ofLine(lettering.role[of], number);
}

function fontName({ plan }: Packet, font: string): string {
  const own = plan.design.fonts.find((f) => `own:${f.id}` === font);
  return own?.name ?? plan.tables.fonts.find((f) => f.id === font)?.name ?? font;
}

/** The fonts that lines are set in, each with the features that are chosen for it. */
function fontsTold(packet: Packet, { lettering }: LaidLetters): string {
  const told = lettering.lines.map((line) => {
    const name = fontName(packet, fontOfLine(lettering, line));
    const features = featuresOfLine(lettering, line).map((tag) => featureName(packet, tag));
    return features.length === 0 ? name : `${name} (${features.join(', ')})`;
  });
  return [...new Set(told)].join(', ');
}

function featureName({ terms: { lettering } }: Packet, tag: FeatureTag): string {
  const set = stylisticSet(tag);
  const words: Readonly<Record<string, string>> = lettering.features;
  return set === null
    ? (words[`letters.feature.${tag}`] ?? tag)
    : lettering.features['letters.feature.set'].replace('{number}', String(set));
}

/** Letters that are drawn in another form of their font, each once for a line; null for none. */
function formsTold({ terms: { lettering: terms } }: Packet, { lettering }: LaidLetters): string | null {
  const told = lettering.lines.flatMap(({ text: words, forms = [] }, i) =>
    forms.flatMap(({ at }) => [...words].slice(at, at + 1).map((letter) => terms.formOf(letter, i + 1))),
  );
  return told.length === 0 ? null : [...new Set(told)].join(', ');
}

function signBlocks(packet: Packet, sign: SignPlan, laid: LaidLetters, width: Mm): Block[] {
  const terms = packet.terms.lettering;
  const { lettered, stencils } = sign;
  const { make, arcRise, along, stencil } = laid.lettering;
  const { told } = packet;
  const bridges = stencils?.layers.reduce((sum, layer) => sum + layer.stencil.bridges.length, 0) ?? 0;
  const colors = lettered.layers.map(
    ({ role, finish }) => `${roleIn(packet, role)}: ${packet.say.finish(finish)}`,
  );
  const arch = arcRise > 0 ? terms.up(told(arcRise)) : terms.down(told(-arcRise));
  const facts = [
    [terms.font, fontsTold(packet, laid)],
    [terms.formsOf, formsTold(packet, laid)],
    [terms.make, packet.words.patterns.mode[make]],
    [terms.bridges, make === 'stencil' ? terms.bridgesOf(bridges, told(stencil.bridgeWidth)) : null],
    [terms.colors, colors.join(', ')],
    [terms.along, along === undefined ? null : terms.alongOf[along]],
    [terms.arch, arcRise === 0 || along !== undefined ? null : arch],
  ] as const;
  const edge = edgesOf(packet, sign, laid);
  const rows = tableOf(
    [
      [terms.words, 5, ({ words }) => words],
      [terms.capHeight, 2.4, ({ capHeight }) => told(capHeight), 'figure'],
      [terms.baseline, 2.8, ({ baseline }) => told(baseline - edge.y), 'figure'],
      [terms.left, 2.8, ({ box }) => told(box.x - edge.x), 'figure'],
      [terms.right, 2.8, ({ box }) => told(edge.x + edge.w - box.x - box.w), 'figure'],
    ],
    stretchesOf(packet, sign),
    width,
  );
  const entries = facts.flatMap(([term, words]) => (words === null ? [] : entry(term, words, width, TERM)));
  return [
    heading(packet.say.name(sign.id)),
    ...held([picture(packet, sign, laid, width), ...entries]),
    ...rows,
    ...(isPaint(laid) ? [space(1.5), ...paragraph(terms.onFace, width, TEXT.small)] : []),
    ...(!isBent(laid.lettering) ? [] : [space(1.5), ...paragraph(terms.bent, width, TEXT.small)]),
    space(5),
  ];
}

/** How every sign is lettered, with the heights and gaps that a painter marks on the board. */
export function lettering(packet: Packet): Content[] {
  const { plan, body } = packet;
  const signs = plan.signs.flatMap((sign) => {
    const laid = plan.layout.parts.filter(isLettered).find((p) => p.id === sign.id);
    return laid && sign.lettered.glyphs.length > 0 ? [{ sign, laid }] : [];
  });
  if (signs.length === 0) return [];
  const blocks = signs.flatMap(({ sign, laid }) => signBlocks(packet, sign, laid, body.w));
  return [
    {
      title: packet.terms.titles.lettering,
      blocks: [...paragraph(packet.terms.lettering.lead, body.w), space(2), ...blocks],
    },
  ];
}
