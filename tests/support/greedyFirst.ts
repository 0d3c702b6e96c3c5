import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The files and folders that take the longest, the longest first. */
const GREEDY = [
  'tools/scripts',
  'e2e/everyState',
  'contract/fuzz',
  'e2e/hostile',
  'attack/',
  'e2e/',
  'survival/',
  'loop/',
  'calibration/',
  'stories/',
  'loopback/',
];

const rank = ({ moduleId }: TestSpecification): number => {
  const at = GREEDY.findIndex((part) => moduleId.includes(`/tests/${part}`));
  return at < 0 ? GREEDY.length : at;
};

/** Begins with what takes longest: a long file begun last leaves all workers but one idle. */
export class GreedyFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}
