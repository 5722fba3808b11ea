import { PDFDocument } from '@cantoo/pdf-lib';
import { dxfOf } from '../../../src/output/dxf/dxf.ts';
import { pdfOf } from '../../../src/output/pdf/pdf.ts';
import { svgOf } from '../../../src/output/svg/svg.ts';
import { LETTERS } from '../../output/setWith.ts';
import { fullOfInk } from '../../patterns/setup.ts';
import { FROM_MEMORY, type Row, type Section } from '../table.ts';

async function rows(): Promise<Row[]> {
  const drawing = fullOfInk(25.4, 50.8);
  const pages = [{ width_mm: 25.4, height_mm: 50.8, drawing }];
  const page = (
    await PDFDocument.load(await pdfOf(pages, { title: '', date: '', language: 'en' }, LETTERS))
  ).getPage(0);
  const svg = svgOf(drawing);
  const dxf = dxfOf(drawing);
  const [, width = '', , viewed = ''] =
    /width="([^"]*)" height="([^"]*)" viewBox="0 0 ([^ ]*) /.exec(svg) ?? [];
  const found = (there: boolean) => (there ? 'there' : 'missing');
  const dxfSource = 'ezdxf.readthedocs.io and help.autodesk.com, header variables';
  return [
    {
      check: 'a page 1 in wide in a PDF, points',
      source: 'ISO 32000-1 8.3.2.3, as quoted in PDF library manuals: 1/72 in',
      expected: 72,
      found: page.getWidth(),
      tolerance: 1e-4,
    },
    {
      check: 'width of a drawing 1 in wide in an SVG',
      source: 'CSS Values and Units 5.2: 1 in = 25.4 mm = 96 px',
      expected: '25.4mm',
      found: width,
    },
    { check: 'its user units, mm', source: 'CSS Values and Units 5.2', expected: '25.4', found: viewed },
    {
      check: 'DXF: $ACADVER',
      source: 'help.autodesk.com: AC1009 is R11 and R12',
      expected: 'AC1009',
      found: /\$ACADVER\s+1\s+(\S+)/.exec(dxf)?.[1] ?? 'none',
    },
    {
      check: 'DXF: $INSUNITS',
      source: `${dxfSource}; newer than R12, ${FROM_MEMORY}`,
      expected: 'missing',
      found: found(dxf.includes('$INSUNITS')),
    },
    {
      check: 'DXF: the word millimeters in its head, since R12 carries no unit',
      source: dxfSource,
      expected: 'there',
      found: found(dxf.slice(0, 200).includes('millimeters')),
    },
  ];
}

export const files: Section = { number: 14, title: 'Units of PDF, SVG and DXF', rows };
