import { describe, expect, it } from 'vitest';
import { intakesBetween, presentIntake } from '../../../core/assess/intake.ts';
import { DAY, decided, on, seen } from './dogOnPlan.ts';

const visit = (day: string, kcal: number) => seen(1, day, { kcal });

describe('what the dog eats now', () => {
  const first = decided(DAY, 'visit-1', 1000);

  it('is the ration decided at the last visit or since, whatever was told', () => {
    expect(presentIntake(visit(DAY, 1300), [decided(on(-20), '', 700), first])).toBe(1000);
    expect(presentIntake(visit(on(-3), 1300), [first])).toBe(1000);
  });

  it('is the diet told since, and the ration where that is it within 1 %, or no diet is told', () => {
    const now = (kcal: number) => presentIntake(visit(on(14), kcal), [first]);
    expect(now(1300)).toBe(1300);
    expect(now(980)).toBe(980);
    expect(now(1012)).toBe(1012);
    expect(now(1010)).toBe(1000);
    expect(now(990)).toBe(1000);
    expect(now(0)).toBe(1000);
  });

  it('is the diet told where nothing was decided yet', () => {
    expect(presentIntake(visit(DAY, 1300), [])).toBe(1300);
    expect(presentIntake(visit(DAY, 0), [])).toBe(0);
  });
});

describe('what was eaten from visit to visit', () => {
  const eaten = (...args: Parameters<typeof intakesBetween>) =>
    intakesBetween(...args).map(({ fromDay, kcalPerDay }) => [fromDay, kcalPerDay]);

  it('is the diet told at the later visit, from the last one on what is told there', () => {
    const visits = [visit(DAY, 1200), visit(on(14), 1100), visit(on(28), 1000)];
    expect(eaten(visits, [])).toEqual([
      [DAY, 1100],
      [on(14), 1000],
      [on(28), 1000],
    ]);
    // What is told later says what was eaten, whatever was decided.
    expect(eaten(visits.slice(0, 2), [decided(DAY, '', 900), decided(on(3), '', 800)])[0]).toEqual([
      DAY,
      1100,
    ]);
  });

  it('is the rations decided where no diet is told later, each from its day on', () => {
    const visits = [visit(DAY, 1200), visit(on(14), 0)];
    const decisions = [
      decided(on(-30), '', 1300),
      decided(DAY, '', 900),
      decided(on(7), '', 850),
      decided(on(14), '', 800),
      decided(on(20), '', 750),
    ];
    expect(eaten(visits, decisions)).toEqual([
      [DAY, 900],
      [on(7), 850],
      [on(14), 800],
      [on(20), 750],
    ]);
    expect(eaten(visits, [decided(on(7), '', 850)])).toEqual([
      [DAY, 1200],
      [on(7), 850],
      [on(14), 850],
    ]);
  });

  it('is nothing where nothing is known', () => {
    expect(eaten([], [decided(DAY, '', 900)])).toEqual([]);
    expect(eaten([visit(DAY, 0)], [])).toEqual([]);
    expect(eaten([visit(DAY, 1)], [])).toEqual([[DAY, 1]]);
  });
});
