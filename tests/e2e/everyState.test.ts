import { judgeStates } from './states/judge.ts';
import { WALKS } from './states/walks.ts';

// The other half stands in otherStates.test.ts: two files, so that two workers share them.
judgeStates(WALKS.filter((_, index) => index % 2 === 0));
