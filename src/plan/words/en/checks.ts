import type { CheckFigures, PlanWords, Say } from '../words.ts';

/** What would clear a hit: the figures that the sweep found to help. */
function cure(f: CheckFigures, say: Say, otherwise: string): string {
  const ways = [
    f.has('thinner_mm') ? `${say.length(f.number('thinner_mm'))} thinner` : '',
    f.has('shorter_mm') ? `${say.length(f.number('shorter_mm'))} shorter` : '',
  ].filter((way) => way !== '');
  return ways.length === 0
    ? otherwise
    : `Make it ${ways.join(' or ')}, or ${otherwise.charAt(0).toLowerCase()}${otherwise.slice(1)}`;
}

const HIT_BY: Readonly<Record<string, string>> = {
  floor: 'floor',
  wall: 'wall',
  'wall-board': 'baseboard',
  ceiling: 'ceiling',
};

const place = (f: CheckFigures): string => HIT_BY[f.text('what')] ?? f.text('what');

/** What of the bed was measured. */
const RECTANGLE: Readonly<Record<string, string>> = { rim: 'frame', field: 'recessed field' };
const READING: Readonly<Record<string, string>> = {
  bottom: 'the width at the bottom',
  middle: 'the width at the middle',
  top: 'the width at the top',
  left: 'the height at the left',
  right: 'the height at the right',
  rising: 'the diagonal from the lower left',
  falling: 'the diagonal from the upper left',
};
const CORNER: Readonly<Record<string, string>> = {
  'lower-left': 'lower left',
  'lower-right': 'lower right',
  'upper-left': 'upper left',
  'upper-right': 'upper right',
};

/** What shows past a square layout at a corner, or what hangs over there. */
function pastCorner(f: CheckFigures, say: Say): string {
  const low = f.text('corner').startsWith('lower');
  const past = (mm: number, where: string): string =>
    `${say.length(Math.abs(mm))} ${mm < 0 ? 'hanging over' : 'of the frame showing'} ${where}`;
  const across = past(f.number('across_mm'), 'at the side');
  return `${across} and ${past(f.number('up_mm'), low ? 'at the bottom' : 'at the top')}`;
}

const EDGE: Readonly<Record<string, string>> = {
  bottom: 'lower edge',
  top: 'upper edge',
  left: 'left edge',
  right: 'right edge',
};

/** What a string tells of an edge, at the places where it was read. */
function bowed(f: CheckFigures, say: Say): string {
  const upright = f.text('edge') === 'left' || f.text('edge') === 'right';
  const way = upright ? 'up' : 'across';
  const places = {
    middle: 'at the middle',
    first: `a quarter of the way ${way}`,
    last: `three quarters of the way ${way}`,
  };
  return (['first', 'middle', 'last'] as const)
    .flatMap((place) => {
      const mm = f.has(`${place}_mm`) ? f.number(`${place}_mm`) : 0;
      return mm === 0
        ? []
        : `${mm > 0 ? 'bellies out' : 'hollows in'} ${say.length(Math.abs(mm))} ${places[place]}`;
    })
    .join(', ');
}

const JOINT: Readonly<Record<string, string>> = {
  miter: 'miter',
  butt: 'butt joint',
  cope: 'cope',
  'half-lap': 'half-lap',
};

/** Why a chosen joint is not made, and what to do. */
const NOT_MADE: Readonly<Record<string, string>> = {
  arch: 'the segments of an arch turn too little for anything but a miter. Choose the miter; the corners at the sill are set with the frame itself.',
  'runs-on':
    'a miter needs the ends of both, and one runs on past the other. Let both end in the corner, or choose another joint.',
  straight: 'their ends meet in one straight line, where they are butted square. Choose the butt joint.',
  along: 'they lie along each other and do not end there. Move one of them, or take the choice back.',
  flat: 'what runs through is flat and has no section to cope to; the end is butted. Choose the butt joint.',
  through: 'neither of the two is the part that is to run through. Choose again which one does.',
  covered: 'other cuts take the wood that it would be cut in. Move one of them, or choose another joint.',
  apart:
    'they do not meet, or not at one height. It will be made where they meet again; else take the choice back.',
  overruled: 'there is another choice for the same two. Take one of them back.',
  'no-strip': 'only strips and frames of the design are joined. Take the choice back.',
};

/** Each message: what is so, with its figure, and what to do about it. */
export const checks: PlanWords['checks'] = {
  'part.off-face': (f, say) =>
    `${say.name(f.part)} reaches ${say.length(f.number('over_mm'))} past the edge of the face. Move or shorten it, or leave it so on purpose.`,
  'part.unsupported': (f, say) =>
    `Only ${say.share(f.number('share'))} of the back of ${say.name(f.part)} lies on something. Put wood under it, or let it lie on another level.`,
  'part.overlap': (f, say) =>
    `${say.name(f.part)} and ${say.name(f.other)} take up the same place (${say.area(f.number('area_m2'))}). Move one, or let it lie on the other.`,
  'part.keep-clear': (f, say) =>
    `${say.name(f.part)} covers ${say.length(f.number('over_mm'))} of the keep-clear ${say.name(f.text('keep_clear'))}. Move it off.`,
  'part.no-size': (f, say) =>
    `${say.name(f.part)} comes out ${say.length(f.number('width_mm'))} wide and ${say.length(f.number('height_mm'))} high. Give it room, or change the rules that hold it.`,
  'part.measures-eased': (f, say) => {
    const [name, asked] = [say.name(f.part), say.length(f.number('asked_mm'))];
    const of = `The outline of ${name}, or of an opening in it,`;
    if (f.text('why') === 'most')
      return `${of} is to have a measure of ${asked}, but its box has room for ${say.length(f.number('fits_mm'))}: it is drawn with that. Make the box larger, or that measure smaller.`;
    if (f.text('why') === 'least')
      return `${of} is to have a side with a radius of ${asked}, but no arc under ${say.length(f.number('fits_mm'))} reaches from corner to corner: it is drawn as a half circle. Make that radius larger, or the side shorter.`;
    return `${of} has no room for its rise, radius or corners in its box: it is drawn with what fits. Make the box larger, or those measures smaller.`;
  },
  'part.unknown-stock': (f, say) =>
    `${say.name(f.part)} asks for the stock “${f.text('stock')}”, which is not there or not of the form it needs (board, molding or sheet). Choose another stock.`,
  'part.unknown-finish': (f, say) =>
    `${say.name(f.part)} asks for the finish “${f.text('finish')}”, which the design does not have. Choose another finish.`,
  'part.unknown-support': (f, say) =>
    `${say.name(f.part)} is to lie on “${f.text('on')}”, which is neither a level of this face nor a part. Choose what it lies on.`,
  'part.support-cycle': (f, say) =>
    `These parts lie on each other in a circle: ${f.parts.map(say.name).join(', ')}. Let one of them lie on the face.`,
  'part.ripped': (f, say) => {
    const [from, to] = f.text('lies') === 'up' ? ['lower', 'upper'] : ['left', 'right'];
    const widths = `${say.name(f.part)} is ripped to a taper: ${say.length(f.number('from_mm'))} wide at the ${from} end, ${say.length(f.number('to_mm'))} at the ${to} end.`;
    const wide = Math.max(f.number('from_mm'), f.number('to_mm')) > f.number('stock_mm');
    return wide
      ? `${widths} Its stock is only ${say.length(f.number('stock_mm'))} wide: choose a wider one.`
      : widths;
  },
  'end.not-met': (f, say) => {
    const [part, at] = [say.name(f.part), say.name(f.text('at'))];
    const count = f.number('count');
    const ends = count > 1 ? `${count} ends of ${part}` : `An end of ${part}`;
    if (f.text('why') === 'around')
      return `The pieces of ${part} should end at “${f.text('at')}”, which is not there. Let them run on, or choose what they end at.`;
    if (f.text('why') === 'unknown')
      return `${ends} should stop at “${f.text('at')}”, which is not there. Choose what it ends at, or another cut.`;
    if (f.text('why') === 'arc')
      return `${ends} should stop at ${at}, but lies on an arc that is sawn or bent in one, which nothing cuts off. Make its arcs of straight segments, or let its path end in a straight side; until then the end stays as drawn.`;
    return f.text('why') === 'part'
      ? `${ends} should stop at ${at} but would meet it with only a part of the width. Move one of the two, or choose another cut; until then the end stays as drawn.`
      : `${ends} should stop at ${at}, which does not lie ahead of it. Move one of the two, or choose another cut; until then the end stays as drawn.`;
  },
  'rule.impossible': (f, say) =>
    f.text('fights') === ''
      ? `This rule cannot hold: ${say.rule(f.text('rule'))}. The stock or a fixed size prevents it: change one of them. Until then the parts stay where they were.`
      : `This rule cannot hold: ${say.rule(f.text('rule'))}. It conflicts with: ${f.text('fights').split(' ').map(say.rule).join('; ')}. Remove or change one of them; until then the parts stay where they were.`,
  'rule.unknown-part': (f, say) =>
    `A rule names “${f.text('part')}”, which does not exist: ${say.rule(f.text('rule'))}. Remove the rule or name another part.`,
  'rule.gap-negative': (f, say) =>
    `Gaps of ${say.length(f.number('gap_mm'))} come out of this rule: ${say.rule(f.text('rule'))}. The parts do not fit. Take one out, or give them more room.`,
  'rule.gap-over-most': (f, say) =>
    `Gaps of ${say.length(f.number('gap_mm'))}, over the ${say.length(f.number('most_mm'))} allowed, come out of this rule: ${say.rule(f.text('rule'))}. Add a part.`,
  'array.count': (f, say) =>
    `${f.number('count')} members of ${say.name(f.part)} do not fit into ${say.length(f.number('room_mm'))}. Use fewer, or narrower ones.`,
  'run.no-room': (f, say) =>
    `The arcs of ${say.name(f.part)} cannot be sawn or bent of stock ${say.length(f.number('across_mm'))} wide on this side of its path: the tightest has a radius of ${say.length(f.number('radius_mm'))}, and the inner edge has no room there, or the edges of two arcs do not meet at their corner. Lay the stock on the other side, use a narrower one, or make the arcs of straight segments.`,
  'run.head-not-flush': (f, say) =>
    `The sheet for the arcs of ${say.name(f.part)} is ${say.length(f.number('head_mm'))} thick, but its stock is ${say.length(f.number('stock_mm'))}: their faces are not flush where they meet, and fasteners are chosen to suit the stock. Choose a sheet of the same thickness.`,
  'run.bent-tight': (f, say) =>
    `${say.name(f.part)} is bent to a radius of ${say.length(f.number('radius_mm'))} where its stock is ${say.length(f.number('across_mm'))} thick. Dry wood bends to about 150 times its thickness, some softwoods to 100. Use stock no thicker than ${say.length(f.number('most_mm'))}, saw kerfs in its inner side, saw the arc from sheet, or make it of straight segments; try the bend on a spare piece first.`,
  'fill.between-stiles': (f, say) =>
    `The slats of ${say.name(f.part)} stand ${say.length(f.number('out_mm'))} out at ${say.angle(f.number('tilt_deg'))} and touch what is beneath along one edge only: no brads are planned for them. Put a stile at each side, at least as thick, and glue and pin the ends of the slats to them before the frame goes up.`,
  'fill.starter': (f, say) =>
    `The lowest board of ${say.name(f.part)} has none below it to lean on. Turn on its starter strip, or fasten a strip ${say.length(f.number('thick_mm'))} thick along the foot first, behind the lowest board.`,
  'fill.uncovered': (f, say) =>
    `The battens of ${say.name(f.part)} are ${say.length(f.number('width_mm'))} wide and lap too little over their boards: with gaps of ${say.length(f.number('gap_mm'))} they need ${say.length(f.number('need_mm'))}, to lap ${say.length(f.number('lap_mm'))} on each side. Use wider battens, or smaller gaps.`,
  'bed.no-room': (f, say) =>
    `The bed's measurements leave no room for the ${f.text('what')} (${say.length(f.number('size_mm'))}). Measure again: frame depth, cleats and platform must fit inside each other.`,
  'bed.legs': (f, say) =>
    `The legs are ${say.length(f.number('legs_mm'))} long, but the lowered face is ${say.length(f.number('needed_mm'))} above the floor. Check leg length, pivot height and pivot distance from the face.`,
  'bed.not-closing': (f, say) =>
    `The measurements of the ${RECTANGLE[f.text('of')] ?? f.text('of')} cannot all be right. Likeliest wrong is ${READING[f.text('reading')] ?? f.text('reading')}: it was read as ${say.length(f.number('read_mm'))}, and by the others it would be ${say.length(f.number('would_mm'))}. Measure it again.`,
  'bed.out-of-square': (f, say) =>
    `The ${RECTANGLE[f.text('of')] ?? f.text('of')} is out of square: ${say.length(Math.abs(f.number('longer_mm')))} long on the diagonal from the ${f.number('longer_mm') > 0 ? 'lower' : 'upper'} left.`,
  'bed.bowed': (f, say) =>
    `The sides of the ${RECTANGLE[f.text('of')] ?? f.text('of')} bow ${f.number('bow_mm') > 0 ? 'out' : 'in'} by ${say.length(Math.abs(f.number('bow_mm')))} between them at the middle. Three widths cannot tell which side it is: read each against a string. Until then both count as straight.`,
  'bed.edge': (f, say) => {
    const seen = f.has('shows_mm') ? f.number('shows_mm') : 0;
    const shows = `${say.length(Math.abs(seen))} ${seen < 0 ? 'hanging over' : 'of the frame showing'}`;
    return `The ${EDGE[f.text('edge')] ?? f.text('edge')} of the ${RECTANGLE[f.text('of')] ?? f.text('of')} ${bowed(f, say)}.${f.has('shows_mm') ? ` Half way along it the square layout leaves ${shows}.` : ''}`;
  },
  'bed.datum': (f, say) => {
    const at = (mm: number) => `${say.length(Math.abs(mm))} ${mm < 0 ? 'beyond' : 'in from'}`;
    const [low, high] = [at(f.number('low_mm')), at(f.number('high_mm'))];
    return f.text('axis') === 'x'
      ? `Marks across count from a line struck square, not from the left edge, which leans: strike it ${low} the lower left corner and ${high} the upper left one.`
      : `Marks up count from a line struck square, not from the lower edge, which runs out: strike it ${low} the lower left corner and ${high} the lower right one.`;
  },
  'bed.corner': (f, say) =>
    `At the ${CORNER[f.text('corner')] ?? f.text('corner')} corner the square layout leaves ${pastCorner(f, say)}.`,
  'joint.overlap': (f, say) =>
    f.parts.length > 1
      ? `${say.name(f.part)} and ${say.name(f.other)} lie over each other with no joint (${say.area(f.number('area_m2'))}). Choose a joint, or move one of them.`
      : `${say.name(f.part)} lies over itself with no joint (${say.area(f.number('area_m2'))}). Give it more room, or narrower stock.`,
  'joint.not-made': (f, say) => {
    const where =
      f.parts.length > 1
        ? `${say.name(f.part)} and ${say.name(f.other)}`
        : `the corners of ${say.name(f.part)}`;
    const places = f.number('count') > 1 ? ` at ${f.number('count')} places` : '';
    return `The ${JOINT[f.text('kind')] ?? f.text('kind')} chosen for ${where} is not made${places}: ${NOT_MADE[f.text('why')] ?? f.text('why')}`;
  },
  'joint.stops': (f, say) =>
    `${say.name(f.part)} stops at ${say.name(f.other)}${f.number('count') > 1 ? `, at ${f.number('count')} ends` : ''}; what was drawn beyond it, up to ${say.length(f.number('beyond_mm'))}, is left out. To let it pass, choose a joint for the two.`,
  'joint.over-saw': (f, say) =>
    `A miter of ${say.angle(f.number('miter_deg'))} on ${say.name(f.part)} is beyond the saw's ${say.angle(f.number('most_deg'))}. Clamp the piece square to the fence against a squared block and turn the saw to ${say.angle(90 - Math.abs(f.number('miter_deg')))} instead, or cut to the mark by hand.`,
  'joint.bevel-over-saw': (f, say) =>
    `A bevel of ${say.angle(f.number('bevel_deg'))} on ${say.name(f.part)} is beyond the saw's ${say.angle(f.number('most_deg'))}. Stand the piece on edge and turn the saw by that angle instead, or cut to the mark by hand.`,
  'piece.nothing-left': (f, say) => {
    const cut = (side: 'left' | 'right'): string => {
      const other = f.text(`${side}_with`);
      const against = other === '' ? '' : `, against ${say.name(other)}`;
      return `the cut at its ${side} end (${say.angle(f.number(`${side}_deg`))}${against})`;
    };
    return `Nothing is left of ${say.name(f.part)}, laid ${say.length(f.number('length_mm'))} long: ${cut('left')} and ${cut('right')} take all of it. Make it longer, cut its ends less steep, or leave it out.`;
  },
  'piece.too-long': (f, say) =>
    `${say.name(f.part)} needs a length of ${say.length(f.number('length_mm'))}; ${f.number('longest_mm') > 0 ? `the longest stock is ${say.length(f.number('longest_mm'))}` : 'no length of its stock that could serve is listed'}. Add a longer stock length, or make it of two pieces.`,
  'piece.too-big': (f, say) =>
    `${say.name(f.part)} is ${say.length(f.number('width_mm'))} by ${say.length(f.number('height_mm'))}, larger than every sheet of its stock. Add a larger sheet, or make it of two pieces.`,
  'piece.too-short': (f, say) =>
    `${say.name(f.part)} has a piece only ${say.length(f.number('length_mm'))} long. Cut it from the end of a long board, with the hands well away from the blade, never loose.`,
  'piece.not-as-read': (f, say) =>
    `${say.name(f.part)} is cut as planned, not as it was measured: its ends are no single straight cuts, or no piece has such edges and diagonal. Measure it again, or take the reading back.`,
  'piece.measured-in-place': (f, say) =>
    `${say.name(f.part)} is cut to ${say.length(f.number('length_mm'))} first and fitted in place.`,
  'cutting.not-proved': (f, say) =>
    `${say.stock(f.text('stock'))}: ${f.number('used')} planned; no plan can do with fewer than ${f.number('lower_bound')}. Fewer than planned was neither found nor ruled out.`,
  'lettering.missing-glyph': (f, say) =>
    `The font of ${say.name(f.part)} has no ${f.text('characters')}. Choose another font or other letters.`,
  'lettering.unknown-font': (f, say) =>
    `The font “${f.text('font')}” of ${say.name(f.part)} is not available. Choose another font.`,
  'lettering.off-sign': (f, say) =>
    f.text('by') === 'path'
      ? `A line of ${say.name(f.part)} is ${say.length(f.number('over_mm'))} longer than the path it runs along. Make it smaller, shorten it, or make the path longer.`
      : f.text('by') === 'outline'
        ? `A line of ${say.name(f.part)} is ${say.length(f.number('over_mm'))} longer than the outline it runs along. Make it smaller, or shorten it.`
        : f.text('by') === 'cover'
          ? `The lettering of ${say.name(f.part)} runs ${say.length(f.number('over_mm'))} under what lies on the sign. Make it smaller, or fit it to the sign.`
          : f.text('by') === 'face'
            ? `The lettering of ${say.name(f.part)} reaches ${say.length(f.number('over_mm'))} past the face. Make it smaller, or move it in.`
            : `The lettering of ${say.name(f.part)} reaches ${say.length(f.number('over_mm'))} past the sign. Make it smaller, or fit it to the sign.`,
  'lettering.crosses': (f, say) => {
    const where = `${f.text('characters')} in ${say.name(f.part)}`;
    if (f.text('by') === 'joint')
      return `Letters cross a joint: ${where}. The pattern shows where. Letter once all is fastened; paint creeps into an open joint.`;
    const told = `Letters cross edges up to ${say.length(f.number('step_mm'))} high: ${where}.`;
    const flat = f.text('make') === 'stencil' || f.text('make') === 'cut-out';
    return flat
      ? `${told} ${f.text('make') === 'stencil' ? 'A stencil' : 'A sawn letter'} does not lie flat there. Move the lettering, or have it traced or pounced.`
      : `${told} The pattern shows where. Press it into the corners, and carry the outlines on by eye.`;
  },
  'lettering.no-room': (f, say) =>
    `The lettering of ${say.name(f.part)} is to fit the sign, but its margins of ${say.length(f.number('margin_mm'))} leave no room: they are ${say.length(f.number('lack_mm'))} too much. Make the margin smaller, or the sign larger.`,
  'lettering.corner': (f, say) =>
    `Letters of ${say.name(f.part)} stand over a sharp corner of what their line runs along, which turns by up to ${say.angle(f.number('turn_deg'))} under them: ${f.text('characters')}. Move the line on, make it smaller, or round the corner.`,
  'lettering.photo': (f, say) => {
    const photo = `The photo “${f.text('photo')}” on ${say.name(f.part)}`;
    switch (f.text('why')) {
      case 'not-printed':
        return `${say.name(f.part)} has photos, but it is not made as a printed sign: they are left out. Choose “Printed in color” for how it is made, or remove them.`;
      case 'off':
        return `${photo} lies beside the sign: nothing of it is printed. Move it in, or remove it.`;
      case 'unknown':
        return `${photo} is not in the design. Open it again, or remove it from the sign.`;
      case 'too-many-pixels':
        return `${photo} has more pixels than a design keeps. Open its file again: it is made smaller.`;
      case 'kind':
        return `${photo} is of a kind that is not printed as it is. Open its file again: it is redrawn.`;
      default:
        return `${photo} is damaged. Open its file again, or remove it.`;
    }
  },
  'lettering.photo-coarse': (f, say) =>
    `The photo “${f.text('photo')}” on ${say.name(f.part)} has only ${f.number('dpi')} pixels to an inch at this size; under ${f.number('least')} it looks coarse at arm's length. Make it smaller, cut off less of it, or use a photo with more pixels.`,
  'lettering.script': (f, say) =>
    f.text('why') === 'rules'
      ? `The font of ${say.name(f.part)} has no rules to set ${f.text('characters')} as their script wants: it would not join these letters, or not place their marks. Choose a font that is made for the script.`
      : `What sets letters together could not be loaded, so ${say.name(f.part)} cannot be lettered yet. Connect to the network and reload the page, or choose letters that stand alone and no features of the font.`,
  'lettering.low-contrast': (f, say) =>
    `The lettering of ${say.name(f.part)} has a contrast of only ${say.number(f.number('ratio'), 1)} to 1 with its ground; 3 to 1 is the least that large letters read well at. Use a lighter or a darker color.`,
  'stencil.loose-island': (f, say) =>
    `${f.number('count')} pieces of the stencil of ${say.name(f.part)} would fall out. Add a bridge, widen the letters or narrow the bridges.`,
  'stencil.thin-tongue': (f, say) =>
    `The stencil of ${say.name(f.part)} has a tongue only ${say.length(f.number('width_mm'))} wide. Handle it gently, or use larger letters.`,
  'stencil.one-bridge': (f, say) =>
    `${f.number('count')} islands of the stencil of ${say.name(f.part)} hang on one bridge, alone or tied to each other${f.number('asked') > 1 ? ': no second one fits or was set' : ', as asked'}. Handle them gently; the sheet marks them.`,
  'stencil.letter-lost': (f, say) =>
    `The bridges in the stencil of ${say.name(f.part)} cover more than half of ${f.text('characters')}. Use narrower bridges, or larger letters.`,
  'stencil.placed-lost': (f, say) =>
    `Bridges set by hand in the stencil of ${say.name(f.part)} belong to ${f.number('count')} islands that the text no longer has. They are passed over; set bridges again where you want them.`,
  'patterns.too-many-pages': (f, say) =>
    f.parts.length > 0
      ? `The pattern of ${say.name(f.part)} comes to ${f.number('pages')} pages. Print on larger sheets or a roll.`
      : `The patterns come to ${f.number('pages')} pages in all. Print on larger sheets, or print fewer templates.`,
  'patterns.unknown-paper': (f) =>
    `The paper “${f.text('paper')}” is not in the tables. Choose another paper.`,
  'patterns.no-margin': (f, say) =>
    `A margin of the paper is 0, but few printers print up to its edge: lines there would be lost, or the page made smaller. Enter the bare margin that your printer needs, ${say.length(f.number('least_mm'))} or more.`,
  'patterns.no-room': (f) =>
    `The margins leave no room to print on ${f.text('paper')}. Make the margins or the overlap smaller.`,
  'finish.primer-hides': (f, say) =>
    `${say.finish(f.text('finish'))} lets the wood show, but a primer is set under it, which hides the wood. Leave the primer out.`,
  'finish.no-containers': (f, say) =>
    `No container is listed for ${say.finish(f.text('finish'))}. Choose a can size.`,
  'fold.hits-floor': (f, say) =>
    `${say.name(f.part)} hits the floor at ${say.angle(f.number('angle_deg'))} of the swing, by ${say.length(f.number('over_mm'))}. ${cure(f, say, 'Move it toward the pivot.')}`,
  'fold.hits-wall': (f, say) =>
    `${say.name(f.part)} hits the ${place(f)} at ${say.angle(f.number('angle_deg'))} of the swing, by ${say.length(f.number('over_mm'))}. ${cure(f, say, 'Move the pivot off the wall.')}`,
  'fold.hits-ceiling': (f, say) =>
    `${say.name(f.part)} hits the ceiling at ${say.angle(f.number('angle_deg'))} of the swing, by ${say.length(f.number('over_mm'))}. ${cure(f, say, 'Lower it on the face.')}`,
  'fold.hits-legs': (f, say) =>
    `${say.name(f.part)} reaches ${say.length(f.number('over_mm'))} lower than the feet of the legs: the bed would rest on it. Make it thinner, or the legs longer.`,
  'fold.hits-side': (f, say) =>
    `${say.name(f.part)} reaches ${say.length(f.number('over_mm'))} into what is on the ${f.text('side')}. Move or shorten it.`,
  'fold.tight': (f, say) =>
    `Only ${say.length(f.number('clear_mm'))} of clearance to the ${place(f)} is left at ${say.angle(f.number('angle_deg'))} of the swing. Floors and walls are rarely true: measure there before you glue.`,
  'load.heavy': (f, say) =>
    `The face adds ${say.mass(f.number('added_kg'))}, over your limit of ${say.mass(f.number('limit_kg'))}. Use thinner stock, and ask the manufacturer of the lift and the hinges what they may carry.`,
  'load.lift': (f, say) =>
    `The face adds ${say.force(f.number('lift_n'))} to the lift at the far edge, over your limit of ${say.force(f.number('limit_n'))}. Use lighter stock up there, or have the springs set as their manufacturer specifies.`,
  'load.no-density': (f, say) =>
    `No density is known for the material of ${say.stock(f.text('stock'))}; its weight is left out. Choose a material for it.`,
  'fastening.through': (f, say) =>
    `Every listed ${f.text('fastener')} long enough for ${say.name(f.part)} (${say.length(f.number('length_mm'))}) would come out on the far side; there are ${say.length(f.number('room_mm'))} of wood. Get shorter ones, or glue.`,
  'fastening.no-brad': (f, say) =>
    `No listed ${f.text('fastener')} fits ${say.name(f.part)}: it needs ${say.length(f.number('need_mm'))} to bite and there are ${say.length(f.number('room_mm'))} of wood. Glue and clamp it, or back it with wood.`,
  'fastening.lever': (f, say) =>
    `${say.name(f.part)} projects ${say.length(f.number('out_mm'))} from a base ${say.length(f.number('base_mm'))} high and would tip off its brads: use screws.`,
  'fastening.few': (f, say) =>
    f.number('count') === 0
      ? `No ${f.text('fastener')} finds room in ${say.name(f.part)}, clear of its edges and of what else is driven in there. Glue and clamp it.`
      : `Only one ${f.text('fastener')} finds room in ${say.name(f.part)}, and by itself it lets the part turn. Glue it too, and hold it straight while the glue sets.`,
  'fastening.loose-edge': (f, say) =>
    `No fastener finds wood along ${say.length(f.number('length_mm'))} of an edge of ${say.name(f.part)}. Glue that edge and clamp it, or change what lies beneath.`,
  'fastening.nothing-solid': (f, say) =>
    `There is nothing solid behind ${say.name(f.part)} to fasten it to. Put wood behind it.`,
  'fastening.screws': (f, say) =>
    `${say.name(f.part)} weighs ${say.mass(f.number('mass_kg'))}: use screws, not brads alone.`,
  'fastening.unknown': (f) =>
    `The design asks for the ${f.text('fastener')} “${f.text('id')}”, which no table lists, so that no length can be chosen. Choose a listed one.`,
  'order.circle': (f, say) =>
    f.text('why') === 'cope'
      ? `${f.parts.map(say.name).join(', ')} are coped to each other in a circle, so none can go first. The steps fasten them one by one: butt one of these joints.`
      : `${f.parts.map(say.name).join(', ')} are to be joined at once, but ${f.text('between').split(' ').map(say.name).join(', ')} has to go over some of them and under others. The steps fasten them one by one, from below: butt one of these joints, or change what lies on what.`,
  'limit.parts': (f, say) =>
    `With ${f.parts.length === 1 ? say.name(f.part) : `${f.parts.length} more parts`} the face would have ${f.number('count')} parts; no more than ${f.number('most')} are planned, so ${f.parts.length === 1 ? 'it is' : 'they are'} left out. Repeat parts less often, or remove some.`,
  'limit.rules': (f) =>
    `The design has ${f.number('count')} rules; up to ${f.number('most')} stay quick to work with.`,
  'limit.letters': (f) =>
    `The signs have ${f.number('count')} letters; up to ${f.number('most')} stay quick to work with.`,
};
