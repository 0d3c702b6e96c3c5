import { describe, expect, it } from 'vitest';
import { heatBand, heatTable } from '../../core/index.ts';
import { en } from '../../templates/index.ts';
import { heatCard } from './support/alone.ts';
import { renderPdf } from '../../templates/render.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT } from './support/handouts.ts';
import { context, firstWarmth, hardyDog } from './support/people.ts';
import { readPdf } from './support/readPdf.ts';

async function printed(heat: ReturnType<typeof heatTable>): Promise<string> {
  const document = heatCard({ ...context('A4'), heat }, en);
  const { bytes } = await renderPdf(document, { fontsFolder, instant: INSTANT });
  return (await readPdf(bytes)).text;
}

/** "to 10 °C | to 9 °C | to 8 °C" before the name of a band. */
const line = (text: string, band: string): number[] =>
  [...(text.split('\n').find((row) => row.includes(band)) ?? '').matchAll(/(\d+) °C/g)].map(
    ([, number]) => Number(number),
  );

describe('limits printed for a dog', () => {
  it('are core’s own at each humidity, in whole degrees down, and above them the next band begins', async () => {
    const dog = { bcs: 7, weightKg: 30 };
    const text = await printed(heatTable({ dog }));
    const bands = ['Run as planned', 'Run with care', 'Half the run time', 'Walk only'];
    const order = ['usual care', 'caution', 'half the run time', 'walk only', 'no run'];
    bands.forEach((band, index) => {
      const ends = line(text, band);
      expect(ends).toHaveLength(3);
      ends.forEach((end, column) => {
        const humidityPct = [60, 80, 100][column]!;
        const at = (tempC: number) => order.indexOf(heatBand({ tempC, humidityPct, dog }).band);
        // A tenth of a degree over a whole one is printed as the whole one.
        expect(at(end - 0.11)).toBeLessThanOrEqual(index);
        expect(at(end + 1)).toBeGreaterThan(index);
      });
    });
    expect(line(text, 'No run')).toEqual(line(text, 'Walk only'));
    expect(text).toContain('lie 3 °C lower');
  });

  // The limits of an ordinary dog: 10, 15, 18 and 20 °C; in wet air 7.9, 12.7, 15.5 and 17.4 (C/D).
  it('fall with humidity', async () => {
    const text = await printed(hardyDog);
    expect(line(text, 'Run as planned')).toEqual([10, 9, 8]);
    expect(line(text, 'Run with care')).toEqual([15, 14, 12]);
    expect(line(text, 'Half the run time')).toEqual([18, 17, 15]);
    expect(line(text, 'Walk only')).toEqual([20, 19, 17]);
  });

  it('say no run at any temperature for a short-nosed dog without clearance, and nothing of shifts or cold', async () => {
    const text = await printed(heatTable({ dog: { shortNosed: true, cleared: false } }));
    expect(text).toContain('always | No run');
    expect(text).not.toMatch(/Run as planned|lower|Below|warm spell/);
  });
});

describe('the card of a dog as it is now', () => {
  it('drops caution in the first warm spell and says for how long', async () => {
    const text = await printed(firstWarmth);
    expect(text).not.toContain('Run with care');
    expect(text).toContain('14 warm days');
    expect(text).toContain('not used to warm days yet');
  });

  it('tells what the cold asks of this dog', async () => {
    const small = await printed(firstWarmth);
    expect(small).toMatch(/Below 0 °C: warm up for 15 min/);
    expect(small).toContain('wears a coat');
    expect(small).toMatch(/Below −10 °C: half[\s\S]*Below −20 °C: no run/);
    expect(await printed(hardyDog)).not.toContain('wears a coat');
  });
});
