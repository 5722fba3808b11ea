import type { CheckFigures, PlanWords, Say } from '../words.ts';

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What would clear a hit: the figures that the sweep found to help. */
function cure(f: CheckFigures, say: Say, otherwise: string): string {
  const ways = [
    f.has('thinner_mm') ? `${say.length(f.number('thinner_mm'))} más delgado` : '',
    f.has('shorter_mm') ? `${say.length(f.number('shorter_mm'))} más corto` : '',
  ].filter((way) => way !== '');
  return ways.length === 0 ? `${capital(otherwise)}.` : `Hacerlo ${ways.join(' o ')}, o ${otherwise}.`;
}

/** With its article: what is hit, and what it stays clear of. */
const HIT_BY: Readonly<Record<string, readonly [hit: string, clear: string]>> = {
  floor: ['el suelo', 'hasta el suelo'],
  wall: ['la pared', 'hasta la pared'],
  'wall-board': ['el rodapié', 'hasta el rodapié'],
  ceiling: ['el techo', 'hasta el techo'],
};

const hit = (f: CheckFigures): string => HIT_BY[f.text('what')]?.[0] ?? f.text('what');
const clear = (f: CheckFigures): string => HIT_BY[f.text('what')]?.[1] ?? f.text('what');

const SIDE: Readonly<Record<string, string>> = { left: 'a la izquierda', right: 'a la derecha' };

/** Both are said of what the table lists. */
const FASTENER: Readonly<Record<string, Record<'every' | 'none' | 'one' | 'the', string>>> = {
  brad: { every: 'Toda punta', none: 'Ninguna punta', one: 'Solo una punta', the: 'la punta' },
  screw: { every: 'Todo tornillo', none: 'Ningún tornillo', one: 'Solo un tornillo', the: 'el tornillo' },
};

const fastener = (f: CheckFigures, how: 'every' | 'none' | 'one' | 'the'): string =>
  FASTENER[f.text('fastener')]?.[how] ?? f.text('fastener');

/** What of the bed has no room, as the check names it. */
const ROOM: Readonly<Record<string, string>> = {
  platform: 'la base',
  cleats: 'los listones de apoyo',
  field: 'el fondo',
  legs: 'las patas',
};

/** What of the bed was measured. */
const RECTANGLE: Readonly<Record<string, readonly [of: string, is: string]>> = {
  rim: ['del bastidor', 'El bastidor'],
  field: ['del fondo hundido', 'El fondo hundido'],
};
const rectangle = (f: CheckFigures, as: 0 | 1): string => RECTANGLE[f.text('of')]?.[as] ?? f.text('of');
const READING: Readonly<Record<string, string>> = {
  bottom: 'el ancho abajo',
  middle: 'el ancho en el medio',
  top: 'el ancho arriba',
  left: 'el alto a la izquierda',
  right: 'el alto a la derecha',
  rising: 'la diagonal desde abajo a la izquierda',
  falling: 'la diagonal desde arriba a la izquierda',
};
const CORNER: Readonly<Record<string, string>> = {
  'lower-left': 'inferior izquierda',
  'lower-right': 'inferior derecha',
  'upper-left': 'superior izquierda',
  'upper-right': 'superior derecha',
};

const EDGE: Readonly<Record<string, string>> = {
  bottom: 'El canto inferior',
  top: 'El canto superior',
  left: 'El canto izquierdo',
  right: 'El canto derecho',
};

/** What a string tells of an edge, at the places where it was read. */
function bowed(f: CheckFigures, say: Say): string {
  const upright = f.text('edge') === 'left' || f.text('edge') === 'right';
  const from = upright ? 'desde abajo' : 'desde la izquierda';
  const places = { middle: 'en el medio', first: `a un cuarto ${from}`, last: `a tres cuartos ${from}` };
  return (['first', 'middle', 'last'] as const)
    .flatMap((place) => {
      const mm = f.has(`${place}_mm`) ? f.number(`${place}_mm`) : 0;
      return mm === 0
        ? []
        : `${say.length(Math.abs(mm))} hacia ${mm > 0 ? 'fuera' : 'dentro'} ${places[place]}`;
    })
    .join(', ');
}

/** What shows past a square layout at a corner, or what hangs over there. */
function pastCorner(f: CheckFigures, say: Say): string {
  const low = f.text('corner').startsWith('lower');
  const past = (mm: number, where: string): string =>
    `${where} ${mm < 0 ? 'sobresale' : 'deja ver el bastidor'} ${say.length(Math.abs(mm))}`;
  const across = past(f.number('across_mm'), 'al lado');
  return `${across} y ${past(f.number('up_mm'), low ? 'abajo' : 'arriba')}`;
}

const JOINT: Readonly<Record<string, string>> = {
  miter: 'El inglete elegido',
  butt: 'La unión a tope elegida',
  cope: 'El contraperfil elegido',
  'half-lap': 'La media madera elegida',
};

/** Why a chosen joint is not made, and what to do. */
const NOT_MADE: Readonly<Record<string, string>> = {
  arch: 'los segmentos de un arco giran demasiado poco para otra cosa que un inglete. Elegir el inglete; las esquinas de abajo se ajustan en el propio marco.',
  'runs-on':
    'un inglete necesita los extremos de ambas, y una sigue más allá de la otra. Hacer que las dos acaben en la esquina o elegir otra unión.',
  straight:
    'sus extremos se encuentran en línea recta, donde van a tope y a escuadra. Elegir la unión a tope.',
  along: 'van una a lo largo de la otra y no acaban allí. Mover una de ellas o retirar la elección.',
  flat: 'la que pasa es plana y no tiene perfil; el extremo va a tope. Elegir la unión a tope.',
  through: 'ninguna de las dos es la pieza que debe pasar. Elegir de nuevo cuál pasa.',
  covered: 'otros cortes se llevan la madera en la que iría. Mover una de ellas o elegir otra unión.',
  apart:
    'no se encuentran, o no a la misma altura. Se hará donde vuelvan a encontrarse; si no, retirar la elección.',
  overruled: 'hay otra elección para las mismas dos. Retirar una de ellas.',
  'no-strip': 'solo se unen listones y marcos del diseño. Retirar la elección.',
};

/** Each message: what is so, with its figure, and what to do about it. */
export const checks: PlanWords['checks'] = {
  'part.off-face': (f, say) =>
    `${say.name(f.part)} sobresale ${say.length(f.number('over_mm'))} del borde del frente. Moverlo o acortarlo, o dejarlo así a propósito.`,
  'part.unsupported': (f, say) =>
    `Solo ${say.share(f.number('share'))} del reverso de ${say.name(f.part)} se apoya en algo. Poner madera debajo o apoyarlo en otro nivel.`,
  'part.overlap': (f, say) =>
    `${say.name(f.part)} y ${say.name(f.other)} ocupan el mismo sitio (${say.area(f.number('area_m2'))}). Mover uno o apoyarlo en el otro.`,
  'part.keep-clear': (f, say) =>
    `${say.name(f.part)} tapa ${say.length(f.number('over_mm'))} de la zona que debe quedar libre ${say.name(f.text('keep_clear'))}. Apartarlo.`,
  'part.no-size': (f, say) =>
    `${say.name(f.part)} queda con ${say.length(f.number('width_mm'))} de ancho y ${say.length(f.number('height_mm'))} de alto. Darle sitio o cambiar las reglas que lo sujetan.`,
  'part.measures-eased': (f, say) => {
    const [name, asked] = [say.name(f.part), say.length(f.number('asked_mm'))];
    const of = `El contorno de ${name}, o de un hueco en ella,`;
    if (f.text('why') === 'most')
      return `${of} debe tener una medida de ${asked}, pero en su caja solo hay sitio para ${say.length(f.number('fits_mm'))}: se dibuja con eso. Agrandar la caja o reducir esa medida.`;
    if (f.text('why') === 'least')
      return `${of} debe tener un lado con un radio de ${asked}, pero ningún arco de menos de ${say.length(f.number('fits_mm'))} llega de esquina a esquina: se dibuja como medio círculo. Aumentar ese radio o acortar el lado.`;
    return `${of} no tiene sitio en su caja para la flecha, el radio o las esquinas: se dibuja con lo que cabe. Agrandar la caja o reducir esas medidas.`;
  },
  'part.unknown-stock': (f, say) =>
    `${say.name(f.part)} pide el material «${f.text('stock')}», que no existe o no tiene la forma que hace falta (listón, moldura o tablero). Elegir otro material.`,
  'part.unknown-finish': (f, say) =>
    `${say.name(f.part)} pide el acabado «${f.text('finish')}», que el diseño no tiene. Elegir otro acabado.`,
  'part.unknown-support': (f, say) =>
    `${say.name(f.part)} debe apoyarse en «${f.text('on')}», que no es un nivel de este frente ni una pieza. Elegir en qué se apoya.`,
  'part.support-cycle': (f, say) =>
    `Estas piezas se apoyan unas en otras en círculo: ${f.parts.map(say.name).join(', ')}. Apoyar una de ellas en el frente.`,
  'part.ripped': (f, say) => {
    const [from, to] = f.text('lies') === 'up' ? ['abajo', 'arriba'] : ['a la izquierda', 'a la derecha'];
    const widths = `${say.name(f.part)} se corta al hilo en cuña: ${say.length(f.number('from_mm'))} de ancho ${from}, ${say.length(f.number('to_mm'))} ${to}.`;
    const wide = Math.max(f.number('from_mm'), f.number('to_mm')) > f.number('stock_mm');
    return wide
      ? `${widths} El material solo tiene ${say.length(f.number('stock_mm'))} de ancho: elegir uno más ancho.`
      : widths;
  },
  'end.not-met': (f, say) => {
    const [part, at] = [say.name(f.part), say.name(f.text('at'))];
    const ends =
      f.number('count') > 1 ? `${f.number('count')} extremos de ${part} deben` : `Un extremo de ${part} debe`;
    if (f.text('why') === 'around')
      return `Las piezas de ${part} deben acabar en «${f.text('at')}», que no existe. Dejar que sigan o elegir dónde acaban.`;
    if (f.text('why') === 'unknown')
      return `${ends} acabar en «${f.text('at')}», que no existe. Elegir en qué acaba, u otro corte.`;
    if (f.text('why') === 'arc')
      return `${ends} acabar en ${at}, pero está en un arco que se sierra o se curva entero y que nada corta. Hacer los arcos de segmentos rectos o dejar que el recorrido acabe en un lado recto; hasta entonces el extremo queda como se dibujó.`;
    return f.text('why') === 'part'
      ? `${ends} acabar en ${at}, pero solo lo alcanzaría con parte del ancho. Mover uno de los dos o elegir otro corte; hasta entonces el extremo queda como se dibujó.`
      : `${ends} acabar en ${at}, que no queda delante. Mover uno de los dos o elegir otro corte; hasta entonces el extremo queda como se dibujó.`;
  },
  'rule.impossible': (f, say) =>
    f.text('fights') === ''
      ? `Esta regla no se puede cumplir: ${say.rule(f.text('rule'))}. El material o una medida fija lo impide: cambiar uno de los dos. Hasta entonces las piezas se quedan donde estaban.`
      : `Esta regla no se puede cumplir: ${say.rule(f.text('rule'))}. Choca con: ${f.text('fights').split(' ').map(say.rule).join('; ')}. Quitar o cambiar una de ellas; hasta entonces las piezas se quedan donde estaban.`,
  'rule.unknown-part': (f, say) =>
    `Una regla nombra «${f.text('part')}», que no existe: ${say.rule(f.text('rule'))}. Quitar la regla o nombrar otra pieza.`,
  'rule.gap-negative': (f, say) =>
    `De esta regla salen huecos de ${say.length(f.number('gap_mm'))}: ${say.rule(f.text('rule'))}. Las piezas no caben. Sacar una o darles más sitio.`,
  'rule.gap-over-most': (f, say) =>
    `De esta regla salen huecos de ${say.length(f.number('gap_mm'))}, más de los ${say.length(f.number('most_mm'))} permitidos: ${say.rule(f.text('rule'))}. Añadir una pieza.`,
  'array.count': (f, say) =>
    `${f.number('count')} elementos de ${say.name(f.part)} no caben en ${say.length(f.number('room_mm'))}. Poner menos, o más estrechos.`,
  'run.no-room': (f, say) =>
    `Los arcos de ${say.name(f.part)} no se pueden aserrar ni curvar con material de ${say.length(f.number('across_mm'))} de ancho a este lado del recorrido: el más cerrado tiene un radio de ${say.length(f.number('radius_mm'))}, y el canto interior no tiene sitio ahí, o los cantos de dos arcos no se encuentran en su esquina. Poner el material al otro lado, usar uno más estrecho o hacer los arcos de tramos rectos.`,
  'run.head-not-flush': (f, say) =>
    `El tablero para los arcos de ${say.name(f.part)} tiene ${say.length(f.number('head_mm'))} de grueso, pero sus listones tienen ${say.length(f.number('stock_mm'))}: no quedan enrasados donde se unen, y los clavos y tornillos se eligen según los listones. Elegir un tablero del mismo grueso.`,
  'run.bent-tight': (f, say) =>
    `${say.name(f.part)} se curva a un radio de ${say.length(f.number('radius_mm'))}, y ahí su listón tiene ${say.length(f.number('across_mm'))} de grueso. La madera seca se curva hasta unas 150 veces su grueso; algunas coníferas, hasta 100. Elegir listones de ${say.length(f.number('most_mm'))} de grueso como máximo, hacer cortes de sierra por la cara interior, aserrar el arco de un tablero o hacerlo de tramos rectos; probar antes la curva con un sobrante.`,
  'fill.between-stiles': (f, say) =>
    `Las lamas de ${say.name(f.part)} sobresalen ${say.length(f.number('out_mm'))} a ${say.angle(f.number('tilt_deg'))} y tocan lo que hay debajo solo con un canto: no llevan clavos en el plan. Poner a cada lado un montante al menos igual de grueso, y encolar y clavar a él las puntas de las lamas antes de montar el marco.`,
  'fill.starter': (f, say) =>
    `La tabla más baja de ${say.name(f.part)} no tiene otra debajo en la que apoyarse inclinada. Activar su listón de arranque, o fijar antes al pie, detrás de la tabla más baja, un listón de ${say.length(f.number('thick_mm'))} de grueso.`,
  'fill.uncovered': (f, say) =>
    `Los tapajuntas de ${say.name(f.part)} tienen ${say.length(f.number('width_mm'))} de ancho y apoyan muy poco en sus tablas: con juntas de ${say.length(f.number('gap_mm'))} necesitan ${say.length(f.number('need_mm'))}, para apoyar ${say.length(f.number('lap_mm'))} a cada lado. Elegir tapajuntas más anchos o juntas más estrechas.`,
  'bed.no-room': (f, say) =>
    `Las medidas de la cama no dejan sitio para ${ROOM[f.text('what')] ?? f.text('what')} (${say.length(f.number('size_mm'))}). Medir de nuevo: fondo del bastidor, listones de apoyo y base deben caber unos en otros.`,
  'bed.legs': (f, say) =>
    `Las patas miden ${say.length(f.number('legs_mm'))}, pero el frente bajado queda a ${say.length(f.number('needed_mm'))} del suelo. Revisar el largo de las patas, la altura del eje de giro y su distancia al frente.`,
  'bed.not-closing': (f, say) =>
    `Las medidas ${rectangle(f, 0)} no pueden ser todas correctas. Lo más probable es que falle ${READING[f.text('reading')] ?? f.text('reading')}: se leyó ${say.length(f.number('read_mm'))} y, según las demás, sería ${say.length(f.number('would_mm'))}. Medir de nuevo.`,
  'bed.out-of-square': (f, say) =>
    `${rectangle(f, 1)} está fuera de escuadra: la diagonal desde ${f.number('longer_mm') > 0 ? 'abajo' : 'arriba'} a la izquierda mide ${say.length(Math.abs(f.number('longer_mm')))} de más.`,
  'bed.bowed': (f, say) =>
    `Los costados ${rectangle(f, 0)} se arquean ${say.length(Math.abs(f.number('bow_mm')))} entre los dos hacia ${f.number('bow_mm') > 0 ? 'fuera' : 'dentro'} en el medio. Tres anchos no dicen cuál de los dos: leer cada uno contra un cordel. Hasta entonces valen por rectos.`,
  'bed.edge': (f, say) => {
    const seen = f.has('shows_mm') ? f.number('shows_mm') : 0;
    const shows = `${seen < 0 ? 'sobresale' : 'deja ver el bastidor'} ${say.length(Math.abs(seen))}`;
    return `${EDGE[f.text('edge')] ?? f.text('edge')} ${rectangle(f, 0)} se arquea: ${bowed(f, say)}.${f.has('shows_mm') ? ` En su mitad la disposición a escuadra ${shows}.` : ''}`;
  },
  'bed.datum': (f, say) => {
    const at = (mm: number) => `${say.length(Math.abs(mm))} ${mm < 0 ? 'por fuera' : 'por dentro'}`;
    const [low, high] = [at(f.number('low_mm')), at(f.number('high_mm'))];
    return f.text('axis') === 'x'
      ? `Las marcas a lo ancho se miden desde una línea trazada a escuadra y no desde el canto izquierdo, que va inclinado: trazarla ${low} de la esquina de abajo y ${high} de la de arriba.`
      : `Las marcas a lo alto se miden desde una línea trazada a escuadra y no desde el canto inferior, que va inclinado: trazarla ${low} de la esquina izquierda y ${high} de la derecha.`;
  },
  'bed.corner': (f, say) =>
    `En la esquina ${CORNER[f.text('corner')] ?? f.text('corner')} la disposición a escuadra ${pastCorner(f, say)}.`,
  'joint.overlap': (f, say) =>
    f.parts.length > 1
      ? `${say.name(f.part)} y ${say.name(f.other)} se montan sin ninguna unión (${say.area(f.number('area_m2'))}). Elegir una unión o mover uno de los dos.`
      : `${say.name(f.part)} se monta sobre sí mismo sin ninguna unión (${say.area(f.number('area_m2'))}). Darle más sitio o un material más estrecho.`,
  'joint.not-made': (f, say) => {
    const where =
      f.parts.length > 1
        ? `${say.name(f.part)} y ${say.name(f.other)}`
        : `las esquinas de ${say.name(f.part)}`;
    const places = f.number('count') > 1 ? ` en ${f.number('count')} sitios` : '';
    return `${JOINT[f.text('kind')] ?? f.text('kind')} para ${where} no se hace${places}: ${NOT_MADE[f.text('why')] ?? f.text('why')}`;
  },
  'joint.stops': (f, say) =>
    `${say.name(f.part)} acaba en ${say.name(f.other)}${f.number('count') > 1 ? `, en ${f.number('count')} extremos` : ''}; lo dibujado más allá, hasta ${say.length(f.number('beyond_mm'))}, se omite. Para que pase, elegir una unión para los dos.`,
  'joint.over-saw': (f, say) =>
    `Un inglete de ${say.angle(f.number('miter_deg'))} en ${say.name(f.part)} pasa de los ${say.angle(f.number('most_deg'))} de la sierra. Sujetar la pieza a escuadra con la guía contra un taco escuadrado y girar la sierra a ${say.angle(90 - Math.abs(f.number('miter_deg')))}, o cortar por la marca a mano.`,
  'joint.bevel-over-saw': (f, say) =>
    `Un bisel de ${say.angle(f.number('bevel_deg'))} en ${say.name(f.part)} pasa de los ${say.angle(f.number('most_deg'))} de la sierra. Poner la pieza de canto y girar la sierra ese ángulo, o cortar por la marca a mano.`,
  'piece.nothing-left': (f, say) => {
    const cut = (side: 'left' | 'right'): string => {
      const other = f.text(`${side}_with`);
      const against = other === '' ? '' : `, contra ${say.name(other)}`;
      return `el corte de su extremo ${side === 'left' ? 'izquierdo' : 'derecho'} (${say.angle(f.number(`${side}_deg`))}${against})`;
    };
    return `No queda nada de ${say.name(f.part)}, trazado con ${say.length(f.number('length_mm'))} de largo: ${cut('left')} y ${cut('right')} se lo llevan todo. Alargarlo, cortar sus extremos con menos ángulo o quitarlo.`;
  },
  'piece.too-long': (f, say) =>
    `${say.name(f.part)} necesita ${say.length(f.number('length_mm'))} de largo; ${f.number('longest_mm') > 0 ? `el material más largo mide ${say.length(f.number('longest_mm'))}` : 'no hay en la lista ningún largo de su material que sirva'}. Añadir un material más largo o hacerlo de dos piezas.`,
  'piece.too-big': (f, say) =>
    `${say.name(f.part)} mide ${say.length(f.number('width_mm'))} por ${say.length(f.number('height_mm'))}, más que cualquier tablero de su material. Añadir un tablero mayor o hacerlo de dos piezas.`,
  'piece.too-short': (f, say) =>
    `${say.name(f.part)} tiene una pieza de solo ${say.length(f.number('length_mm'))} de largo. Cortarla del extremo de un listón largo, con las manos lejos del disco, nunca suelta.`,
  'piece.not-as-read': (f, say) =>
    `${say.name(f.part)} se corta como estaba previsto, no como se midió: sus extremos no son cortes rectos simples, o ninguna pieza tiene esos cantos y esa diagonal. Medir otra vez o retirar la medida.`,
  'piece.measured-in-place': (f, say) =>
    `${say.name(f.part)} se corta primero a ${say.length(f.number('length_mm'))} y se ajusta en su sitio.`,
  'cutting.not-proved': (f, say) =>
    `${say.stock(f.text('stock'))}: ${f.number('used')} previstos; ningún plan puede hacerlo con menos de ${f.number('lower_bound')}. Menos de lo previsto ni se halló ni se descartó.`,
  'lettering.missing-glyph': (f, say) =>
    `La letra de ${say.name(f.part)} no tiene ${f.text('characters')}. Elegir otra letra u otro texto.`,
  'lettering.unknown-font': (f, say) =>
    `El tipo de letra «${f.text('font')}» de ${say.name(f.part)} no está disponible. Elegir otro.`,
  'lettering.off-sign': (f, say) =>
    f.text('by') === 'path'
      ? `Una línea de ${say.name(f.part)} es ${say.length(f.number('over_mm'))} más larga que el trazado que sigue. Hágala más pequeña, acórtela o alargue el trazado.`
      : f.text('by') === 'outline'
        ? `Una línea de ${say.name(f.part)} es ${say.length(f.number('over_mm'))} más larga que el contorno que sigue. Hágala más pequeña o más corta.`
        : f.text('by') === 'cover'
          ? `El rótulo de ${say.name(f.part)} entra ${say.length(f.number('over_mm'))} debajo de lo que hay sobre el letrero. Hacerlo más pequeño o ajustarlo al letrero.`
          : f.text('by') === 'face'
            ? `El rótulo de ${say.name(f.part)} sobresale ${say.length(f.number('over_mm'))} del frente. Hacerlo más pequeño o moverlo hacia dentro.`
            : `El rótulo de ${say.name(f.part)} sobresale ${say.length(f.number('over_mm'))} del letrero. Hacerlo más pequeño o ajustarlo al letrero.`,
  'lettering.crosses': (f, say) => {
    const where = `${f.text('characters')} en ${say.name(f.part)}`;
    if (f.text('by') === 'joint')
      return `Hay letras que cruzan una junta: ${where}. La plantilla muestra dónde. Rotular cuando todo esté fijado; en una junta abierta entra pintura.`;
    const told = `Hay letras que cruzan cantos de hasta ${say.length(f.number('step_mm'))} de alto: ${where}.`;
    const flat = f.text('make') === 'stencil' || f.text('make') === 'cut-out';
    return flat
      ? `${told} ${f.text('make') === 'stencil' ? 'Una plantilla calada' : 'Una letra serrada'} no asienta plana ahí. Mover el rótulo, o calcarlo o estarcirlo.`
      : `${told} La plantilla muestra dónde. Apretarla en los rincones y seguir los contornos a ojo.`;
  },
  'lettering.no-room': (f, say) =>
    `El rótulo de ${say.name(f.part)} debe ajustarse al letrero, pero sus márgenes de ${say.length(f.number('margin_mm'))} no dejan sitio: sobran ${say.length(f.number('lack_mm'))}. Reducir el margen o agrandar el letrero.`,
  'lettering.corner': (f, say) =>
    `Hay letras de ${say.name(f.part)} sobre una esquina viva de lo que sigue su línea, que gira hasta ${say.angle(f.number('turn_deg'))} bajo ellas: ${f.text('characters')}. Corra la línea, hágala más pequeña o redondee la esquina.`,
  'lettering.photo': (f, say) => {
    const photo = `La foto «${f.text('photo')}» de ${say.name(f.part)}`;
    switch (f.text('why')) {
      case 'not-printed':
        return `${say.name(f.part)} tiene fotos, pero no se hace como rótulo impreso: se omiten. Elija «Impreso en color» como forma de hacerlo, o quítelas.`;
      case 'off':
        return `${photo} queda fuera del rótulo: no se imprime nada de ella. Muévala hacia dentro, o quítela.`;
      case 'unknown':
        return `${photo} no está en el diseño. Ábrala de nuevo, o quítela del rótulo.`;
      case 'too-many-pixels':
        return `${photo} tiene más píxeles de los que guarda un diseño. Abra de nuevo su archivo: se reduce.`;
      case 'kind':
        return `${photo} es de un tipo que no se imprime tal cual. Abra de nuevo su archivo: se vuelve a dibujar.`;
      default:
        return `${photo} está dañada. Abra de nuevo su archivo, o quítela.`;
    }
  },
  'lettering.photo-coarse': (f, say) =>
    `La foto «${f.text('photo')}» de ${say.name(f.part)} tiene a este tamaño solo ${f.number('dpi')} píxeles por pulgada; con menos de ${f.number('least')} se ve basta a la distancia del brazo. Hágala más pequeña, recorte menos, o use una foto con más píxeles.`,
  'lettering.script': (f, say) =>
    f.text('why') === 'rules'
      ? `El tipo de letra de ${say.name(f.part)} no tiene reglas para poner ${f.text('characters')} como pide su escritura: no uniría estas letras o no colocaría sus signos. Elija un tipo hecho para esa escritura.`
      : `No se ha podido cargar lo que compone las letras; ${say.name(f.part)} aún no se puede rotular. Conéctese a la red y vuelva a cargar la página, o elija letras sueltas y ninguna característica del tipo.`,
  'lettering.low-contrast': (f, say) =>
    `El rótulo de ${say.name(f.part)} contrasta con su fondo solo ${say.number(f.number('ratio'), 1)} a 1; 3 a 1 es lo mínimo para leer bien letras grandes. Usar un color más claro o más oscuro.`,
  'stencil.loose-island': (f, say) =>
    `${f.number('count')} piezas de la plantilla de ${say.name(f.part)} se caerían. Añadir un puente, ensanchar las letras o estrechar los puentes.`,
  'stencil.thin-tongue': (f, say) =>
    `La plantilla de ${say.name(f.part)} tiene una lengüeta de solo ${say.length(f.number('width_mm'))} de ancho. Tratarla con cuidado o usar letras mayores.`,
  'stencil.one-bridge': (f, say) =>
    `${f.number('count')} islas de la plantilla de ${say.name(f.part)} cuelgan de un puente, solas o unidas entre sí${f.number('asked') > 1 ? ': un segundo no cabe o no se puso' : ', como se pidió'}. Tratarlas con cuidado; la hoja las señala.`,
  'stencil.letter-lost': (f, say) =>
    `Los puentes de la plantilla de ${say.name(f.part)} tapan más de la mitad de ${f.text('characters')}. Usar puentes más estrechos o letras mayores.`,
  'stencil.placed-lost': (f, say) =>
    `Los puentes puestos a mano en la plantilla de ${say.name(f.part)} son de ${f.number('count')} islas que el texto ya no tiene. Se pasan por alto; ponerlos de nuevo donde hagan falta.`,
  'patterns.too-many-pages': (f, say) =>
    f.parts.length > 0
      ? `La plantilla de ${say.name(f.part)} llega a ${f.number('pages')} hojas. Imprimir en hojas mayores o en rollo.`
      : `Las plantillas llegan a ${f.number('pages')} hojas en total. Imprimir en hojas mayores, o menos plantillas.`,
  'patterns.unknown-paper': (f) => `El papel «${f.text('paper')}» no está en las tablas. Elegir otro papel.`,
  'patterns.no-margin': (f, say) =>
    `Un margen del papel es 0, pero pocas impresoras llegan hasta el borde: ahí se perderían líneas, o la hoja saldría reducida. Escribir el margen que la impresora deja en blanco, ${say.length(f.number('least_mm'))} o más.`,
  'patterns.no-room': (f) =>
    `Los márgenes no dejan sitio para imprimir en ${f.text('paper')}. Reducir los márgenes o el solape.`,
  'finish.primer-hides': (f, say) =>
    `${say.finish(f.text('finish'))} deja ver la madera, pero lleva debajo una imprimación que la tapa. Quitar la imprimación.`,
  'finish.no-containers': (f, say) =>
    `No hay ningún envase en la lista para ${say.finish(f.text('finish'))}. Elegir un tamaño de lata.`,
  'fold.hits-floor': (f, say) =>
    `${say.name(f.part)} da en el suelo a ${say.angle(f.number('angle_deg'))} del giro, por ${say.length(f.number('over_mm'))}. ${cure(f, say, 'moverlo hacia el eje de giro')}`,
  'fold.hits-wall': (f, say) =>
    `${say.name(f.part)} da en ${hit(f)} a ${say.angle(f.number('angle_deg'))} del giro, por ${say.length(f.number('over_mm'))}. ${cure(f, say, 'apartar el eje de giro de la pared')}`,
  'fold.hits-ceiling': (f, say) =>
    `${say.name(f.part)} da en el techo a ${say.angle(f.number('angle_deg'))} del giro, por ${say.length(f.number('over_mm'))}. ${cure(f, say, 'bajarlo en el frente')}`,
  'fold.hits-legs': (f, say) =>
    `${say.name(f.part)} llega ${say.length(f.number('over_mm'))} más abajo que los pies de las patas: la cama se apoyaría en él. Hacerlo más delgado o las patas más largas.`,
  'fold.hits-side': (f, say) =>
    `${say.name(f.part)} entra ${say.length(f.number('over_mm'))} en lo que hay ${SIDE[f.text('side')] ?? f.text('side')}. Moverlo o acortarlo.`,
  'fold.tight': (f, say) =>
    `Solo quedan ${say.length(f.number('clear_mm'))} ${clear(f)}, a ${say.angle(f.number('angle_deg'))} del giro. Suelos y paredes rara vez son rectos: medir allí antes de encolar.`,
  'load.heavy': (f, say) =>
    `El frente añade ${say.mass(f.number('added_kg'))}, más que el límite puesto de ${say.mass(f.number('limit_kg'))}. Usar material más delgado y preguntar al fabricante del elevador y de las bisagras qué pueden llevar.`,
  'load.lift': (f, say) =>
    `El frente añade ${say.force(f.number('lift_n'))} a la fuerza en el extremo libre, más que el límite puesto de ${say.force(f.number('limit_n'))}. Usar material más ligero allí arriba o ajustar los muelles como indica su fabricante.`,
  'load.no-density': (f, say) =>
    `No se conoce la densidad del material de ${say.stock(f.text('stock'))}; su peso no se cuenta. Elegirle un material.`,
  'fastening.through': (f, say) =>
    `${fastener(f, 'every')} de la lista que alcance para ${say.name(f.part)} (${say.length(f.number('length_mm'))}) saldría por el otro lado; hay ${say.length(f.number('room_mm'))} de madera. Conseguir otras más cortas o encolar.`,
  'fastening.no-brad': (f, say) =>
    `${fastener(f, 'none')} de la lista sirve para ${say.name(f.part)}: hacen falta ${say.length(f.number('need_mm'))} para agarrar y hay ${say.length(f.number('room_mm'))} de madera. Encolar y prensar, o reforzar con madera por detrás.`,
  'fastening.lever': (f, say) =>
    `${say.name(f.part)} sobresale ${say.length(f.number('out_mm'))} de una base de ${say.length(f.number('base_mm'))} de alto y se volcaría de sus puntas: usar tornillos.`,
  'fastening.few': (f, say) =>
    f.number('count') === 0
      ? `${fastener(f, 'none')} cabe en ${say.name(f.part)}, lejos de sus cantos y de lo demás clavado allí. Encolar y prensar.`
      : `${fastener(f, 'one')} cabe en ${say.name(f.part)}, y con eso solo la pieza puede girar. Encolarla también y sujetarla derecha mientras seca la cola.`,
  'fastening.loose-edge': (f, say) =>
    `Ninguna fijación halla madera en ${say.length(f.number('length_mm'))} de un canto de ${say.name(f.part)}. Encolar ese canto y prensarlo, o cambiar lo que hay debajo.`,
  'fastening.nothing-solid': (f, say) =>
    `Detrás de ${say.name(f.part)} no hay nada macizo donde fijarlo. Poner madera detrás.`,
  'fastening.screws': (f, say) =>
    `${say.name(f.part)} pesa ${say.mass(f.number('mass_kg'))}: usar tornillos, no solo puntas.`,
  'fastening.unknown': (f) =>
    `El diseño pide ${fastener(f, 'the')} «${f.text('id')}», que no está en ninguna tabla, así que no se puede elegir el largo. Elegir uno de la lista.`,
  'order.circle': (f, say) =>
    f.text('why') === 'cope'
      ? `${f.parts.map(say.name).join(', ')} se contraperfilan unos a otros en círculo, así que ninguno puede ir primero. Los pasos los fijan uno a uno: unir a tope uno de estos encuentros.`
      : `${f.parts.map(say.name).join(', ')} deben unirse a la vez, pero ${f.text('between').split(' ').map(say.name).join(', ')} va sobre algunos y bajo otros. Los pasos los fijan uno a uno, de abajo arriba: unir a tope uno de estos encuentros o cambiar qué se apoya en qué.`,
  'limit.parts': (f, say) =>
    `Con ${f.parts.length === 1 ? say.name(f.part) : `${f.parts.length} piezas más`} el frente tendría ${f.number('count')} piezas; no se planean más de ${f.number('most')}, así que ${f.parts.length === 1 ? 'se omite' : 'se omiten'}. Repetir menos piezas o quitar algunas.`,
  'limit.rules': (f) =>
    `El diseño tiene ${f.number('count')} reglas; hasta ${f.number('most')} se trabaja con rapidez.`,
  'limit.letters': (f) =>
    `Los letreros tienen ${f.number('count')} letras; hasta ${f.number('most')} se trabaja con rapidez.`,
};
