import { describe, expect, it } from 'vitest';
import { effectScope, nextTick, reactive, ref } from 'vue';
import { useAnswerTo } from '../../../renderer/visit/useAnswerTo.ts';

function answering() {
  const answer = reactive({ decision: 'open' as 'open' | 'accepted' | 'edited', answeredTo: '' });
  const proposal = ref('700 kcal');
  const to = effectScope().run(() =>
    useAnswerTo(
      () => answer,
      () => proposal.value,
      ['edited'],
    ),
  )!;
  return { answer, proposal, to };
}

describe('an answer to a proposal', () => {
  it('stands while the proposal is the same', async () => {
    const { answer, to } = answering();
    to.decide('accepted');
    await nextTick();
    expect(answer.decision).toBe('accepted');
    expect(to.changed.value).toBe(false);
  });

  it('is open again on another proposal, until there is a new one', async () => {
    const { answer, proposal, to } = answering();
    to.decide('accepted');
    proposal.value = '650 kcal';
    await nextTick();
    expect(answer.decision).toBe('open');
    expect(to.changed.value).toBe(true);
    to.decide('accepted');
    await nextTick();
    expect(answer.decision).toBe('accepted');
    expect(to.changed.value).toBe(false);
  });

  it('that holds for any proposal stays', async () => {
    const { answer, proposal, to } = answering();
    to.decide('edited');
    proposal.value = '650 kcal';
    await nextTick();
    expect(answer.decision).toBe('edited');
  });

  it('comes back with a draft for the proposal it was given to, and for no other', async () => {
    const { answer, to } = answering();
    Object.assign(answer, { decision: 'accepted', answeredTo: '700 kcal' });
    await nextTick();
    expect(answer.decision).toBe('accepted');
    Object.assign(answer, { decision: 'accepted', answeredTo: '900 kcal' });
    await nextTick();
    expect(answer.decision).toBe('open');
    expect(to.changed.value).toBe(true);
  });
});
