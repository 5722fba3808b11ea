/** Texts of a form that has a name of its own, by which the schema asks for it. */
export const FORMS = {
  id: 'an id of letters, digits, dots, dashes and underscores',
  unreserved: 'an id that is no reserved word',
  part: 'the id of a part (not the face, a level or a member of an array)',
  thing:
    'face, a level (level:rim, level:ledge, level:field or level:skin), the id of a part, or a member of an array as id[column,row]',
  color: 'a color like #1e5f74',
  picture: 'an id of the form picture-1 up to picture-6399',
  base64: 'letters, digits, + and / (base64)',
  outline: 'closed outlines of whole numbers, as in M0 0L10 0L0 10Z',
  own: 'names of parts of this file alone',
} as const;

/** Kinds of values that a field can ask for. */
export type TypeName =
  | 'number'
  | 'string'
  | 'boolean'
  | 'array'
  | 'object'
  | 'int'
  | 'record'
  | 'tuple'
  | 'null';
type Bound = 'least' | 'more' | 'most' | 'less';

/** What is said of a file that does not open or was mended, in one language; its keys stay as they stand in it. */
export interface FileWords {
  readonly file: string;
  readonly quoted: (text: string) => string;
  readonly message: (where: string, found: string, expected: string, todo: string) => string;
  readonly secondId: (list: string, id: string, fresh: string) => string;
  readonly found: {
    readonly nothing: string;
    readonly list: (entries: number) => string;
    readonly object: string;
    readonly unknownFields: (names: string) => string;
    readonly characters: (count: number) => string;
    readonly levels: (count: number) => string;
    readonly noVersion: string;
    readonly version: (version: number) => string;
    readonly otherVersion: (version: string) => string;
    readonly end: string;
    readonly place: (what: string, line: number, column: number) => string;
  };
  readonly expected: {
    readonly type: Readonly<Record<TypeName, string>>;
    readonly form: Readonly<Record<keyof typeof FORMS, string>>;
    readonly anyForm: string;
    readonly textForm: string;
    readonly characters: (bound: Bound, limit: number) => string;
    readonly entries: (bound: Bound, limit: number) => string;
    readonly number: (bound: Bound, limit: number) => string;
    readonly oneOf: (values: string) => string;
    readonly known: (field: string) => string;
    readonly fields: string;
    readonly most: (limit: number) => string;
    readonly design: string;
    readonly versions: (last: number) => string;
    readonly json: string;
  };
  readonly todo: {
    readonly noDesign: string;
    readonly noDesignOrFonts: string;
    readonly chooseDesign: string;
    readonly newer: string;
    readonly unknownVersion: string;
    readonly damaged: string;
    readonly takeOut: string;
    readonly addField: string;
    readonly correct: string;
  };
}

const BOUNDS: Readonly<Record<Bound, string>> = {
  least: 'at least',
  more: 'more than',
  most: 'at most',
  less: 'less than',
};

export const ENGLISH_FILE: FileWords = {
  file: 'The file',
  quoted: (text) => `“${text}”`,
  message: (where, found, expected, todo) => `${where}: found ${found}; expected ${expected}. ${todo}`,
  secondId: (list, id, fresh) => `${list}: a second “${id}” was given the id “${fresh}”`,
  found: {
    nothing: 'nothing',
    list: (entries) => `a list of ${entries}`,
    object: 'an object',
    unknownFields: (names) => `the unknown field ${names}`,
    characters: (count) => `${count} characters`,
    levels: (count) => `${count} levels of brackets inside each other`,
    noVersion: 'no field “showface”',
    version: (version) => `format version ${version}`,
    otherVersion: (version) => `the version ${version}`,
    end: 'the end of the text',
    place: (what, line, column) => `${what} at line ${line}, column ${column}`,
  },
  expected: {
    type: {
      number: 'a number',
      string: 'a text',
      boolean: 'true or false',
      array: 'a list',
      object: 'an object',
      int: 'a whole number',
      record: 'an object',
      tuple: 'a list of fixed length',
      null: 'null',
    },
    form: FORMS,
    anyForm: 'one of the forms that this field takes',
    textForm: 'a text of the right form',
    characters: (bound, limit) => `a text of ${BOUNDS[bound]} ${limit} characters`,
    entries: (bound, limit) => `a list of ${BOUNDS[bound]} ${limit} entries`,
    number: (bound, limit) => `a number of ${BOUNDS[bound]} ${limit}`,
    oneOf: (values) => `one of ${values}`,
    known: (field) => `a known ${field}`,
    fields: 'only fields of this format',
    most: (limit) => `at most ${limit}`,
    design: 'a design file, which names its format version in that field',
    versions: (last) => `a format version from 1 to ${last}`,
    json: 'more of a JSON text',
  },
  todo: {
    noDesign: 'This is not a design file of this tool.',
    noDesignOrFonts: 'This is not a design file of this tool, or its opened fonts are too large.',
    chooseDesign: 'Choose a design file; those end in .json and are written by “Save”.',
    newer:
      'The file was written by a newer version of this tool: open it with that one. The file was not changed.',
    unknownVersion: 'No version of this tool wrote that. The file was not changed.',
    damaged: 'The file is damaged or cut short: take a backup copy, or mend it at that place.',
    takeOut: 'Take it out, or open the file with the version that wrote it.',
    addField: 'Add the field.',
    correct: 'Correct the value and open the file again.',
  },
};
