import { judgeStates } from './states/judge.ts';
import { WALKS } from './states/walks.ts';

judgeStates(WALKS.filter((_, index) => index % 2 === 1));
