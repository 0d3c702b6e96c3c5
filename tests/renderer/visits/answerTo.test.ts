import { describe, expect, it } from 'vitest';
import { effectScope, reactive, ref } from 'vue';
import { useAnswerTo } from '../../../renderer/visits/useAnswerTo.ts';

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
  it('stands while the proposal is the same', () => {
    const { answer, to } = answering();
    to.decide('accepted');
    expect(answer.decision).toBe('accepted');
    expect(to.changedFrom.value).toBeNull();
  });

  it('is kept on another proposal, which names the old one until it is looked at', () => {
    const { answer, proposal, to } = answering();
    to.decide('accepted');
    proposal.value = '650 kcal';
    expect(answer.decision).toBe('accepted');
    expect(to.changedFrom.value).toBe('700 kcal');
    to.decide('accepted');
    expect(to.changedFrom.value).toBeNull();
  });

  it('needs no second look where the first proposal comes back', () => {
    const { proposal, to } = answering();
    to.decide('accepted');
    proposal.value = '650 kcal';
    proposal.value = '700 kcal';
    expect(to.changedFrom.value).toBeNull();
  });

  it('that holds for any proposal needs no second look', () => {
    const { answer, proposal, to } = answering();
    to.decide('edited');
    proposal.value = '650 kcal';
    expect(answer.decision).toBe('edited');
    expect(to.changedFrom.value).toBeNull();
  });

  it('comes back with a draft, and says where something else is proposed by then', () => {
    const { answer, to } = answering();
    Object.assign(answer, { decision: 'accepted', answeredTo: '700 kcal' });
    expect(to.changedFrom.value).toBeNull();
    Object.assign(answer, { decision: 'accepted', answeredTo: '900 kcal' });
    expect(answer.decision).toBe('accepted');
    expect(to.changedFrom.value).toBe('900 kcal');
  });
});
