import { UNDER_EDGE } from '../../../lettering/painted.ts';
import { lastOf } from '../../../list/at.ts';
import { type PlanWords, partNames, type Say } from '../words.ts';

/** Before a word that sounds like i, the word for “and” changes. */
const and = (word: string): string => (/^h?[ií](?![aeo])/i.test(word) ? 'e' : 'y');

export const list = (items: readonly string[]): string => {
  if (items.length < 2) return items.join('');
  const last = lastOf(items);
  return `${items.slice(0, -1).join(', ')} ${and(last)} ${last}`;
};

const named = (parts: readonly string[], say: Say): string => list(partNames(parts, say));

export const steps: PlanWords['steps'] = {
  prepare: () =>
    'Asegurar la cama plegada para que no pueda caer: echar el cierre y además apuntalarla. Despejar el suelo debajo. Limpiar y lijar el frente para que agarren la cola y la pintura; si la pintura es vieja, comprobar si tiene plomo antes de lijar.',
  'cut-sheets': (parts, say) => `Cortar los tableros en el orden de los números: ${named(parts, say)}.`,
  'cut-boards': (parts, say) =>
    `Cortar los listones uno tras otro, cada uno desde su extremo izquierdo, como lo muestran sus hojas: ${named(parts, say)}. Rotular cada pieza al salir de la sierra.`,
  notch: (parts, say) =>
    `Serrar los rebajes donde las piezas encajan a media madera: ${named(parts, say)}. Probar antes la profundidad en dos recortes: cruzados, sus caras deben quedar a ras. Sujetar la pieza, serrar a fondo corte junto a corte y quitar el resto con formón.`,
  groove: (parts, say) =>
    `Hacer las ranuras a lo largo de los tableros, con fresadora o sierra circular contra una regla sujeta: ${named(parts, say)}. Medir cada ranura desde el canto inferior, nunca desde la anterior, y probar antes la profundidad en un recorte.`,
  'prime-backs': (parts, say) =>
    `Sellar con una mano los reversos y las caras que otras taparán; dejar sin pintar lo que se encolará: ${named(parts, say)}.`,
  'mask-glue': (parts, say) =>
    `Marcar con las reglas de trazado dónde se encolarán piezas sobre estas, y poner cinta ${say.length(UNDER_EDGE)} por dentro de las líneas: ${named(parts, say)}. El plano de zonas sin pintar enseña dónde. Lo que tapa la cinta queda en madera, porque la cola agarra en la madera y no en la pintura, y enseña después dónde va cada pieza.`,
  'mask-joints': (parts, say) =>
    `Dar primero a estos todas las manos en el color de las juntas: ${named(parts, say)}. Una vez seco, pegar cinta del ancho de la junta sobre cada junta, primero las largas horizontales, y cortar las cortas entre ellas; apretar los bordes. Las piezas se pintan encima en el paso siguiente: quitar la cinta mientras su pintura siga blanda.`,
  'paint-before': (parts, say) =>
    `Imprimar y pintar en plano sobre el banco, todo menos la última mano; con todas sus manos los letreros, lo que lleva formas pintadas y lo que lleva una sola mano: ${named(parts, say)}. Dejar sin pintar las juntas que se encolarán.`,
  'paint-ground': (parts, say) =>
    `Pintar en la propia cama, antes de fijar nada allí: ${named(parts, say)}. Encintar los bordes que ninguna pieza tapará y quitar toda la cinta antes de que endurezca la pintura.`,
  mark: () =>
    'Pasar las marcas al frente, sobre la pintura donde la haya, con las reglas de trazado desde los dos cantos de referencia. Nunca medir de marca a marca.',
  'dry-fit': (parts, say) => `Colocar sin cola, sujetar con cinta y mirar desde lejos: ${named(parts, say)}.`,
  fix: (parts, say) => `Encolar y fijar: ${named(parts, say)}.`,
  'cut-in-place': (parts, say) =>
    `Colocar en seco las piezas vecinas, presentar estas contra ellas, marcar y cortar a medida: ${named(parts, say)}.`,
  assemble: (parts, say) =>
    `Encolar unas con otras y con lo que tienen debajo de una vez, con la cola fresca, y fijar: ${named(parts, say)}. De las piezas a media madera va primero la que lleva el rebaje en su cara.`,
  bend: (parts, say) =>
    `Trazar el arco, y después curvar y fijar: ${named(parts, say)}. Empezar por un extremo, llevar la pieza poco a poco a la línea e irla fijando o sujetando; el otro extremo queda suelto hasta que llega a su marca. Apartar la cara: una pieza que se rompe salta hacia atrás.`,
  'measure-in-place': (parts, say) => `Presentar, marcar, cortar a medida y fijar: ${named(parts, say)}.`,
  letter: (parts, say) =>
    `Unir las plantillas con cinta, colocarlas por las líneas de centro con la pintura de debajo ya seca y rotular: ${named(parts, say)}.`,
  'paint-around-letters': (parts, say) =>
    `Pasar contornos y sombras de la plantilla, colocada por las líneas de centro, y pintarlos en el letrero hasta un poco por debajo del borde de las letras: ${named(parts, say)}. Dejar secar antes de encolar letras encima.`,
  'mount-letters': (parts, say) =>
    `Serrar las letras por su contorno, pintar sus caras, las líneas interiores y los cantos serrados, y encolarlas sobre la plantilla, colocada por las líneas de centro: ${named(parts, say)}. Dejar sin pintar lo que se encolará.`,
  'mount-print': (parts, say) =>
    `Imprimir en color, recortar por la línea y encolar desde el centro hacia fuera: ${named(parts, say)}. Extender la cola fina sobre el tablero, y el barniz transparente sobre la impresión ya seca; probar ambos en un retal, pues algunas tintas se corren. A pleno sol las impresiones se decoloran en meses: ponerlas a la sombra, o usar tinta de pigmento bajo un barniz que frene la luz ultravioleta.`,
  'paint-after': (parts, say) =>
    `Tapar los agujeros de los clavos, encintar y pintar en su sitio: ${named(parts, say)}.`,
  'last-coat': (parts, say) =>
    `Tapar los agujeros de los clavos, lijar, encintar lo que lleva otro color y dar la última mano: ${named(parts, say)}.`,
  'fit-hardware': (parts, say) =>
    `Taladrar los agujeros y atornillar los herrajes: ${named(parts, say)}. Embutir las cabezas del lado del colchón a ras.`,
  'try-swing': () =>
    'Entre dos, y sin nadie delante, bajar la cama despacio por todo su giro. Escuchar si roza; ver si el cierre sigue enganchando y si el elevador aguanta el peso añadido.',
};
