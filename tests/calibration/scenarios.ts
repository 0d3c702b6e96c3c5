/** What happens to a simulated dog. Absent = as the model assumes. */
export interface Scenario {
  readonly name: string;
  readonly modelHolds: boolean;
  /** Length of the record, days; drawn evenly. */
  readonly days: readonly [number, number];
  /** Days between weighings; drawn evenly, so that gaps are uneven. */
  readonly gap: readonly [number, number];
  /** True energy eaten for each logged kcal. */
  readonly eatenPerLogged?: number;
  /** Standard deviation of that ratio between dogs. */
  readonly eatenSpread?: number;
  /** Water and gut fill lost over the first two weeks, share of body weight. */
  readonly waterLoss?: number;
  /** Error of one weighing, share of body weight, where it is not the assumed 1 %. */
  readonly noise?: number;
  /** Half of the dogs change to a second scale on the way. */
  readonly secondScale?: boolean;
  /** One weighing is off by 10 %, a slip of the pen. */
  readonly slip?: boolean;
  /** The need falls by this share over the record. */
  readonly adaptation?: number;
  /** The need follows the body, kg^0.75, instead of staying as it is. */
  readonly followsBody?: boolean;
  /** Judges the estimate carried to the latest weight, as the program feeds by it. */
  readonly carried?: boolean;
  /** Three runs a week are done and logged. */
  readonly runs?: boolean;
}

const MIXED = { days: [28, 180], gap: [10, 35] } as const;

/**
 * Sizes of the departures are our own (D): none is published as a spread in client-owned dogs.
 */
export const SCENARIOS: readonly Scenario[] = [
  { name: 'model holds, 4–26 weeks', modelHolds: true, ...MIXED },
  { name: 'model holds, two visits in 2 weeks', modelHolds: true, days: [14, 14], gap: [14, 14] },
  { name: 'model holds, 8 weeks', modelHolds: true, days: [56, 56], gap: [10, 20] },
  { name: 'model holds, 26 weeks', modelHolds: true, days: [182, 182], gap: [10, 35] },
  { name: 'model holds, second scale', modelHolds: true, ...MIXED, secondScale: true },
  { name: 'model holds, logged runs', modelHolds: true, ...MIXED, runs: true },
  { name: '2 % water lost at first', modelHolds: false, ...MIXED, waterLoss: 0.02 },
  { name: 'log 10 % short', modelHolds: false, ...MIXED, eatenPerLogged: 1 / 0.9 },
  { name: 'log off by ±10 % (SD)', modelHolds: false, ...MIXED, eatenSpread: 0.1 },
  { name: 'need falls by 10 %', modelHolds: false, ...MIXED, adaptation: 0.1 },
  { name: 'need follows the body', modelHolds: false, ...MIXED, followsBody: true },
  {
    name: 'need follows the body, carried to the latest weight',
    modelHolds: false,
    ...MIXED,
    followsBody: true,
    carried: true,
  },
  { name: 'weighing error twice as large', modelHolds: false, ...MIXED, noise: 0.02 },
  { name: 'one weighing 10 % off', modelHolds: false, ...MIXED, slip: true },
  {
    name: 'water, short log and second scale',
    modelHolds: false,
    ...MIXED,
    waterLoss: 0.02,
    eatenPerLogged: 1 / 0.9,
    secondScale: true,
  },
];
