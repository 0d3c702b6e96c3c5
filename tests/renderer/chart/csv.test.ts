import { describe, expect, it } from 'vitest';
import { csvOf } from '../../../renderer/chart/csv.ts';
import type { Cell, ChartTable } from '../../../renderer/chart/table.ts';

const table = (...rows: (readonly Cell[])[]): ChartTable => ({
  columns: [
    { head: 'Day', unit: '', kind: 'day' },
    { head: 'Change', unit: 'kg', kind: 'number', digits: 2 },
    { head: 'Note', unit: '', kind: 'text' },
  ],
  rows,
});
const lines = (...rows: (readonly Cell[])[]) => csvOf(table(...rows)).split('\r\n');

// RFC 4180, sections 2.1 to 2.7 (S): lines end in CRLF, a head of the same number of fields, fields
// with commas, quotes or line ends in double quotes, and a quote inside doubled.
describe('numbers as comma-separated values', () => {
  it('begin with the mark of UTF-8 and a line of heads with their units', () => {
    expect(new TextEncoder().encode(csvOf(table())).slice(0, 3)).toEqual(
      new Uint8Array([0xef, 0xbb, 0xbf]),
    );
    // A head with a comma in it stands in quotes.
    expect(lines()[0]).toBe('\uFEFFDay,"Change, kg",Note');
  });

  it('end every line with CRLF', () => {
    expect(csvOf(table(['2025-02-01', 1, '']))).toMatch(/\r\n$/);
    expect(lines(['2025-02-01', 1, ''])).toHaveLength(3);
  });

  it('keep days in ISO and numbers with a point, whatever the practice reads', () => {
    expect(lines(['2025-02-01', -1.005, null])[1]).toBe('2025-02-01,-1.00,');
    expect(lines(['2025-02-01', null, null])[1]).toBe('2025-02-01,,');
    expect(lines(['2025-02-01', -0.001, null])[1]).toBe('2025-02-01,0.00,');
  });

  it('give each end of a range a column of its own', () => {
    const range = csvOf({
      columns: [{ head: 'Corridor', unit: 'kg', kind: 'range', digits: 1 }],
      rows: [[[20, 21.2]], [null]],
    });
    expect(range).toBe('\uFEFF"Corridor, low, kg","Corridor, high, kg"\r\n20.0,21.2\r\n,\r\n');
  });

  it('put commas, quotes and line ends in quotes', () => {
    expect(lines(['2025-02-01', 1, 'says "stiff", after'])[1]).toBe(
      '2025-02-01,1.00,"says ""stiff"", after"',
    );
    expect(csvOf(table(['2025-02-01', 1, 'two\nlines']))).toContain('"two\nlines"');
  });

  // OWASP, CSV injection (M): cells that begin with = + - @ tab or carriage return are run as formulas.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\nx', '＝1', '＋1', '－1', '＠SUM'])(
    'keep a spreadsheet from running the text %j',
    (text) => {
      expect(csvOf(table(['2025-02-01', 1, text]))).toMatch(new RegExp(`,"?'\\${text[0]}`));
    },
  );

  it.each([';', '\t', '|', ':', ' '])('keep %j from parting a text', (sign) => {
    const text = `calm${sign}=1+1`;
    expect(lines(['2025-02-01', 1, text])[1]).toBe(`2025-02-01,1.00,"${text}"`);
  });

  it('leave a negative number a number', () => {
    expect(lines(['2025-02-01', -2, '-2'])[1]).toBe('2025-02-01,-2.00,"\'-2"');
  });
});
