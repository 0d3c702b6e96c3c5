import { describe, expect, it } from 'vitest';
import { heatBand, heatTable } from '../../core/index.ts';
import { press } from '../../templates/frame.ts';
import { en, heatCard, renderPdf } from '../../templates/index.ts';
import { dampAirGrid } from '../../templates/parts/heatBands.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT } from './support/handouts.ts';
import { context, dampAirRule, hardyDog } from './support/people.ts';
import { readPdf } from './support/readPdf.ts';

async function printed(heat: ReturnType<typeof heatTable>): Promise<string> {
  const document = heatCard({ ...context('A4'), heat }, en);
  const { bytes } = await renderPdf(document, { fontsFolder, instant: INSTANT });
  return (await readPdf(bytes)).text;
}

describe('limits printed for a dog', () => {
  it('are core’s own, and just above each the next band begins', async () => {
    const dog = { bcs: 7, weightKg: 30 };
    const table = heatTable({ dog });
    const text = await printed(table);
    const { usualToC, cautionToC, halfToC, walkToC } = table.limits;
    const bands = ['Run as planned', 'Run with care', 'Half the run time', 'Walk only'];
    [usualToC, cautionToC, halfToC, walkToC].forEach((end, index) => {
      expect(text).toContain(`to ${end} °C | ${bands[index]}`);
      const at = (tempC: number) => heatBand({ tempC, humidityPct: 50, dog }).band;
      expect(at(end)).not.toBe(at(end + 1));
    });
    expect(text).toContain(`above ${walkToC} °C | No run`);
    expect(text).toContain('lie 3 °C lower');
  });

  it('say no run at any temperature for a short-nosed dog without clearance', async () => {
    const text = await printed(heatTable({ dog: { shortNosed: true, cleared: false } }));
    expect(text).toContain('always | No run');
    expect(text).not.toContain('Run as planned');
    expect(text).not.toContain('lower');
  });
});

describe('the grid of damp air', () => {
  const tools = press(context('A4'), en.frame);

  it('is left out where damp air changes nothing', () => {
    expect(dampAirGrid(hardyDog, en.heat, tools)).toBeNull();
  });

  it('names the band of every temperature that damp air changes', async () => {
    const text = await printed(dampAirRule);
    expect(text).toMatch(/12 °C \| with care .*\| half \| half \| half/);
    expect(text).not.toMatch(/^10 °C/m);
  });
});
