import { readTables } from '../../../src/command/supplies.ts';
import { formatReading } from '../../../src/measure/format.ts';
import { FROM_MEMORY, type Row, type Section } from '../table.ts';

const US = 'us-mattress.com, yourmattressbuyingguide.com';
const UK = 'bedwarehouse.com/bedsizes.asp';
const EU = `common trade sizes, ${FROM_MEMORY}`;

const INCH = { unit: 'in', fraction: '16' } as const;
const CM = { unit: 'cm', fraction: '16' } as const;

/** Preset of the tables, source, width and length as the tool shows them. */
const SIZES = [
  ['us-twin', US, '38"', '75"'],
  ['us-twin-xl', US, '38"', '80"'],
  ['us-full', US, '53"', '75"'],
  ['us-queen', US, '60"', '80"'],
  ['us-king', US, '76"', '80"'],
  ['us-california-king', US, '72"', '84"'],
  ['uk-small-single', UK, '75 cm', '190 cm'],
  ['uk-single', UK, '90 cm', '190 cm'],
  ['uk-large-single', UK, '105 cm', '200 cm'],
  ['uk-small-double', UK, '120 cm', '190 cm'],
  ['uk-double', UK, '135 cm', '190 cm'],
  ['uk-king', UK, '150 cm', '200 cm'],
  ['uk-super-king', UK, '180 cm', '200 cm'],
  ['eu-90x200', EU, '90 cm', '200 cm'],
  ['eu-140x200', EU, '140 cm', '200 cm'],
  ['eu-160x200', EU, '160 cm', '200 cm'],
  ['eu-180x200', EU, '180 cm', '200 cm'],
] as const;

function rows(): Row[] {
  const { mattresses } = readTables();
  return SIZES.map(([id, source, width, length]) => {
    const preset = mattresses.find((m) => m.id === id);
    const style = source === US ? INCH : CM;
    const found = preset
      ? `${formatReading(preset.width, style)} x ${formatReading(preset.length, style)}`
      : 'no such preset';
    return { check: `preset ${id}`, source, expected: `${width} x ${length}`, found };
  });
}

export const mattresses: Section = {
  number: 5,
  title: 'Mattress sizes (presets, not limits)',
  rows,
};
