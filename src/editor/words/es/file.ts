import type { FileWords } from '../../../design/fileWords.ts';

const BOUNDS = { least: 'al menos', more: 'más de', most: 'como mucho', less: 'menos de' } as const;

/** What is said of a file that does not open or was mended. */
export const fileWords: FileWords = {
  file: 'El archivo',
  quoted: (text) => `«${text}»`,
  message: (where, found, expected, todo) => `${where}: se encontró ${found}; se espera ${expected}. ${todo}`,
  secondId: (list, id, fresh) => `${list}: un segundo «${id}» recibió el identificador «${fresh}»`,
  found: {
    nothing: 'nada',
    list: (entries) => `una lista de ${entries} elementos`,
    object: 'un objeto',
    unknownFields: (names) => `el campo desconocido ${names}`,
    characters: (count) => `${count} caracteres`,
    levels: (count) => `${count} niveles de paréntesis unos dentro de otros`,
    noVersion: 'ningún campo «showface»',
    version: (version) => `la versión de formato ${version}`,
    otherVersion: (version) => `la indicación de versión ${version}`,
    end: 'el final del texto',
    place: (what, line, column) => `${what} en la línea ${line}, columna ${column}`,
  },
  expected: {
    type: {
      number: 'un número',
      string: 'un texto',
      boolean: 'true o false',
      array: 'una lista',
      object: 'un objeto',
      int: 'un número entero',
      record: 'un objeto',
      tuple: 'una lista de largo fijo',
      null: 'null',
    },
    form: {
      id: 'un identificador de letras, cifras, puntos, guiones y guiones bajos',
      unreserved: 'un identificador que no esté reservado',
      part: 'el identificador de una pieza (no el frente, un nivel ni un elemento de una fila)',
      thing:
        'face, un nivel (level:rim, level:ledge, level:field o level:skin), el identificador de una pieza o un elemento de una fila como identificador[columna,fila]',
      color: 'un color como #1e5f74',
      picture: 'un identificador de la forma picture-1 hasta picture-6399',
      base64: 'letras, cifras, + y / (base64)',
      outline: 'contornos cerrados de números enteros, como M0 0L10 0L0 10Z',
      own: 'solo nombres de piezas de este archivo',
    },
    anyForm: 'una de las formas que admite este campo',
    textForm: 'un texto de la forma correcta',
    characters: (bound, limit) => `un texto de ${BOUNDS[bound]} ${limit} caracteres`,
    entries: (bound, limit) => `una lista de ${BOUNDS[bound]} ${limit} elementos`,
    number: (bound, limit) => `un número de ${BOUNDS[bound]} ${limit}`,
    oneOf: (values) => `uno de ${values}`,
    known: (field) => `un ${field} conocido`,
    fields: 'solo campos de este formato',
    most: (limit) => `como mucho ${limit}`,
    design: 'un archivo de diseño que diga en este campo su versión de formato',
    versions: (last) => `una versión de formato de 1 a ${last}`,
    json: 'más texto JSON',
  },
  todo: {
    noDesign: 'No es un archivo de diseño de esta herramienta.',
    noDesignOrFonts:
      'No es un archivo de diseño de esta herramienta, o sus tipos de letra abiertos son demasiado grandes.',
    chooseDesign: 'Elegir un archivo de diseño; acaba en .json y se hace al guardar.',
    newer:
      'El archivo es de una versión más nueva de esta herramienta: abrirlo con ella. El archivo quedó como estaba.',
    unknownVersion: 'Ninguna versión de esta herramienta escribió eso. El archivo quedó como estaba.',
    damaged: 'El archivo está dañado o cortado: usar una copia de seguridad o arreglarlo ahí.',
    takeOut: 'Quitarlo, o abrir el archivo con la versión que lo escribió.',
    addField: 'Añadir el campo.',
    correct: 'Corregir el valor y abrir el archivo de nuevo.',
  },
};
