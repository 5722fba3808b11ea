import type { fixingWords as en } from '../en/fixing.ts';

/** Words of the fixing step. */
export const fixingWords: Record<keyof typeof en, string> = {
  'fixing.tabs': 'Partes del paso de fijación',
  'fixing.order': 'Orden de trabajo',
  'fixing.fasteners': 'Puntas y tornillos',
  'fixing.marks': 'Marcas',
  'fixing.weight': 'Peso',

  'order.lead': 'Marcar cada paso hecho. Lo hecho se guarda con el diseño.',
  'order.count': '{done} de {all} hechos',

  'brads.settings': 'Con qué se fija',
  'brads.lengths': 'Largos de punta en casa',
  'brads.lengthsHint': 'Ninguno marcado: cuentan todos los largos de la tabla.',
  'brads.spacing': 'Separación',
  'brads.fromEdge': 'Desde extremos y cantos',
  'brads.shortOfFar': 'Sin llegar al otro lado por',
  'brads.bite': 'Agarre mínimo',
  'brads.screwOver': 'Tornillos a partir de',
  'brads.map': 'Dónde van',
  'brads.mapPicture': '{count} puntas y tornillos en el frente',
  'brads.front': 'desde delante',
  'brads.back': 'desde atrás',
  'brads.use': 'En total',
  'brads.glue': 'Cola: {volume} en cordones.',
  'brads.table': 'Pieza a pieza',
  'brads.part': 'Pieza',
  'brads.from': 'Clavado',
  'brads.none': 'Todavía nada que fijar.',
  'brads.biteOf': 'Agarre',

  'marks.lead':
    'Todas las marcas parten de una referencia y se redondean ahí, nunca en cadena: pasarlas con una regla de trazado.',
  'marks.x': 'A lo ancho, desde el canto izquierdo',
  'marks.y': 'A lo alto, desde el canto inferior',
  'marks.at': 'A',
  'marks.edges': 'Cantos que hay ahí',
  'marks.edge.x.low': '{name}, izquierda',
  'marks.edge.x.mid': '{name}, centro',
  'marks.edge.x.high': '{name}, derecha',
  'marks.edge.x.hole': 'agujero de {name}',
  'marks.edge.y.low': '{name}, abajo',
  'marks.edge.y.mid': '{name}, centro',
  'marks.edge.y.high': '{name}, arriba',
  'marks.edge.y.hole': 'agujero de {name}',
  'marks.none': 'Todavía no hay marcas.',

  'load.added': 'El frente añade',
  'load.bare': 'La cama sin frente pesa',
  'load.liftAdded': 'Más fuerza en el extremo libre',
  'load.liftBare': 'La cama sin frente allí',
  'load.moment': 'Momento añadido, cama bajada',
  'load.center': 'Centro de gravedad',
  'load.centerAt': '{x} desde la izquierda, {y} desde abajo, {z}',
  'load.mapPicture': 'El frente con el centro de gravedad de lo añadido',
  'load.curve': 'Momento en el eje a lo largo del giro',
  'load.curvePicture':
    'De plegada a bajada el momento de la cama sin frente va de {bareStowed} a {bareLowered}, el del frente de {addedStowed} a {addedLowered}.',
  'load.angle': 'Bajada',
  'load.seriesAdded': 'el frente',
  'load.seriesBare': 'la cama sin frente',
  'load.table': 'Como tabla',
  'load.limits': 'Avisar por encima de',
  'load.warnAdded': 'Peso añadido',
  'load.warnLift': 'Fuerza añadida',
  'load.byPart': 'Piezas más pesadas',
  'load.estimate':
    'Los pesos salen de densidades y medidas: son una estimación. Al lado está la fuerza de la cama sin frente y sin muelles; lo que llevan muelles o amortiguadores lo dice su fabricante.',

  'caution.wood':
    'El polvo de MDF es dañino, y el ruido también: usar aspiración, mascarilla y protección de ojos y oídos.',
  'caution.saw':
    'Ojos y oídos protegidos, protector del disco puesto, manos lejos del disco. Dejar que se pare antes de acercarlas.',
  'caution.swing':
    'Girar primero la cama desnuda, despacio y con ayuda: bisagras y cantos pillan. Niños y animales fuera del paso.',
  'caution.weight':
    'Más peso puede hacer caer la cama. Ajustar elevador, bisagras y cierre antes de que nadie se acueste debajo.',
  'caution.fastening':
    'Echar el cierre y apuntalar la cama plegada antes de trabajar en ella. Buscar cables y tuberías antes de taladrar una pared.',
  'caution.pages':
    'Medir el cuadrado impreso antes de cortar: una plantilla con la medida equivocada estropea el trabajo.',

  'caution.export':
    'Lo impreso planea decoración, no estructura: bisagras, elevador, cierre y anclaje, según el fabricante de los herrajes. Imprimir las plantillas al 100 %.',
  'caution.putAway': 'Quitar esta precaución',

  'caution.title': 'Antes de que nadie se acueste debajo',
  'caution.anchor':
    'Anclar la cama a la pared portante (obra: tacos adecuados; tabique: en los montantes) con las fijaciones que indica el fabricante de los herrajes. La decoración añade peso: preguntar al fabricante si bisagras, elevador y anclajes lo llevan.',
  'caution.latch':
    'Poner un cierre seguro que sujete la cama arriba sin ninguna mano, y probarlo con el peso añadido.',
  'caution.children': 'Niños y animales lejos del giro. Bajarla y subirla solo viendo bien el suelo.',
  'caution.protect':
    'Llevar protección de ojos y oídos en la sierra y mascarilla al lijar. El polvo de MDF es dañino.',
  'caution.lead': 'La pintura vieja puede tener plomo: comprobarlo antes de lijar o rascar.',
  'caution.codes':
    'Las normas locales van primero. Para electricidad, estructura y donde se exija, llamar a un profesional. Esta herramienta planea decoración, no estructura.',
};
