import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { openOwn } from '../support/desk.ts';
import { dogOf, soundVisit } from '../support/records.ts';

const DRY = { name: 'Dry food, adult', kind: 'food', kcalPer100g: 360 } as const;

describe('the foods a practice keeps', () => {
  test('are told with the status, by name, and stay when the practice is opened anew', async () => {
    const desk = await openOwn();
    await desk.ok('shelf/keepFood', { id: null, food: { ...DRY, name: ' Wet food ' } });
    const { foods } = await desk.ok('shelf/keepFood', { id: null, food: DRY });
    expect(foods.map(({ name }) => name)).toEqual(['Dry food, adult', 'Wet food']);
    await desk.service.close();
    const again = await openOwn(desk.folder);
    expect((await again.ok('app/status', {})).shelf.foods).toEqual(foods);
  });

  test('have a name of their own, whatever the case; a treat may share it', async () => {
    const desk = await openOwn();
    await desk.ok('shelf/keepFood', { id: null, food: DRY });
    const same = { ...DRY, name: 'DRY FOOD, adult' };
    const error = await desk.refused('shelf/keepFood', { id: null, food: same });
    expect(error.fields).toEqual([
      { path: 'food.name', message: 'Dry food, adult is kept already.' },
    ]);
    const { foods } = await desk.ok('shelf/keepFood', {
      id: null,
      food: { ...same, kind: 'treat' },
    });
    expect(foods.map(({ kind }) => kind).sort()).toEqual(['food', 'treat']);
  });

  test('are changed and removed, and what was removed comes back under its id', async () => {
    const desk = await openOwn();
    const [kept] = (await desk.ok('shelf/keepFood', { id: null, food: DRY })).foods;
    const { id } = kept!;
    const changed = await desk.ok('shelf/keepFood', { id, food: { ...DRY, kcalPer100g: 352.5 } });
    expect(changed.foods).toEqual([{ ...DRY, id, kcalPer100g: 352.5 }]);
    expect((await desk.ok('shelf/dropFood', { id })).foods).toEqual([]);
    expect((await desk.ok('shelf/keepFood', { id, food: DRY })).foods).toEqual([{ ...DRY, id }]);
  });

  test('must have an energy a food can have', async () => {
    const desk = await openOwn();
    const error = await desk.refused('shelf/keepFood', {
      id: null,
      food: { ...DRY, kcalPer100g: 951 },
    });
    expect(error.message).toContain('Energy of the food must be from 5 to 950 kcal per 100 g.');
  });

  test('change no visit that names them', async () => {
    const desk = await openOwn();
    const [kept] = (await desk.ok('shelf/keepFood', { id: null, food: DRY })).foods;
    const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
    const visit = soundVisit(dogId, '2026-03-02');
    const diet = [{ ...visit.diet[0]!, name: DRY.name, kcalPer100g: DRY.kcalPer100g }];
    await desk.ok('visits/save', { id: null, visit: { ...visit, diet }, plan: null, food: null });
    await desk.ok('shelf/dropFood', { id: kept!.id });
    const { visits } = await desk.ok('dogs/file', { dogId });
    expect(visits[0]!.diet).toEqual(diet);
  });
});

describe('the phrases a practice keeps', () => {
  test('are kept once each, changed and removed', async () => {
    const desk = await openOwn();
    const text = 'Lead walks on level ground only.';
    const [kept] = (await desk.ok('shelf/keepPhrase', { id: null, text })).phrases;
    expect(kept).toEqual({ id: expect.any(String), text });
    const error = await desk.refused('shelf/keepPhrase', { id: null, text });
    expect(error.fields).toEqual([{ path: 'text', message: 'This phrase is kept already.' }]);
    const { id } = kept!;
    const changed = await desk.ok('shelf/keepPhrase', { id, text: `${text} No stairs.` });
    expect(changed.phrases).toEqual([{ id, text: `${text} No stairs.` }]);
    expect((await desk.ok('shelf/dropPhrase', { id })).phrases).toEqual([]);
  });

  test('are not missed when they are gone already', async () => {
    const desk = await openOwn();
    expect((await desk.ok('shelf/dropPhrase', { id: randomUUID() })).phrases).toEqual([]);
  });
});
