import { describe, expect, it } from 'vitest';
import { layOver } from '../../../renderer/composables/draftStore.ts';

const BASE = { name: '', weight: null as number | null, consent: { given: false }, diet: [] };

describe('a draft laid over the form it belongs to', () => {
  it('brings back what was typed', () => {
    const kept = { name: 'Bramble', weight: 20, consent: { given: true }, diet: [{ name: 'x' }] };
    expect(layOver(BASE, kept)).toEqual(kept);
  });
  it('leaves out what the form no longer knows, and what has another type', () => {
    expect(layOver(BASE, { name: 3, consent: 'yes', ghost: 1 })).toEqual(BASE);
  });
  it('takes a field that was emptied', () => {
    const base: { weight: number | null; name: string } = { weight: 12, name: 'a' };
    expect(layOver(base, { weight: null, name: '' })).toEqual({ weight: null, name: '' });
  });
});
