import { EPSILON } from './load.ts';

/** A week in the search for the shortest ladder; minutes throughout. */
export interface Week {
  /** Of each session: its place on the bout path, and its bouts (or its minutes, once continuous). */
  readonly steps: readonly number[];
  readonly counts: readonly number[];
  /** Place on the bout path of the last session. */
  readonly step: number;
  /** Clean sessions on that step. */
  readonly clean: number;
  readonly minutes: number;
  readonly longest: number;
  readonly least: number;
  /** The highest week so far. */
  readonly peak: number;
  /** The fullest session of bouts so far. */
  readonly fullest: number;
  /** All weeks so far. */
  readonly total: number;
  readonly parent: Week | null;
}

/** The sessions of a week, before they are added up. */
export interface Sessions extends Pick<Week, 'steps' | 'counts' | 'clean'> {
  readonly minutes: readonly number[];
  /** Run-minutes of its fullest session of bouts; 0 without one. */
  readonly bouts: number;
}

/**
 * The weeks of one level of the search that can matter. On one step, what a week with as many
 * clean sessions, as long a longest session, as high a peak and as full a session of bouts can be
 * followed by holds all that can follow on the lesser one.
 */
export class Frontier {
  readonly #bySteps = new Map<number, Week[]>();
  readonly #enough: number;
  readonly #bound: Pick<Week, 'longest' | 'step'> | undefined;

  /** @param bound what no week of this level may pass */
  constructor(sessionsPerStep: number, bound?: Pick<Week, 'longest' | 'step'>) {
    this.#enough = sessionsPerStep;
    this.#bound = bound;
  }

  add(parent: Week, { steps, counts, clean, minutes: each, bouts }: Sessions): void {
    const step = steps.at(-1)!;
    const [minutes, longest] = [each.reduce((a, b) => a + b, 0), Math.max(...each)];
    const bound = this.#bound;
    if (bound !== undefined && (longest > bound.longest || step > bound.step)) return;
    const week: Week = {
      steps,
      counts,
      step,
      clean,
      minutes,
      longest,
      least: Math.min(...each),
      peak: Math.max(parent.peak, minutes),
      fullest: Math.max(parent.fullest, bouts),
      total: parent.total + minutes,
      parent,
    };
    const known = this.#bySteps.get(step) ?? [];
    if (known.some((other) => this.#covers(other, week) && !this.#isNicer(week, other))) return;
    const rest = known.filter((other) => !this.#covers(week, other));
    // The search goes on filling the same lists.
    this.#bySteps.set(step, [...rest, { ...week, steps: [...steps], counts: [...counts] }]);
  }

  weeks(): Week[] {
    return [...this.#bySteps.values()].flat();
  }

  #covers(a: Week, b: Week): boolean {
    return (
      a.clean >= Math.min(b.clean, this.#enough) &&
      a.longest >= b.longest - EPSILON &&
      a.peak >= b.peak - EPSILON &&
      a.fullest >= b.fullest - EPSILON
    );
  }

  /** Of weeks as good as each other: more minutes on the way, then sessions more alike. */
  #isNicer(a: Week, b: Week): boolean {
    if (!this.#covers(a, b)) return false;
    if (Math.abs(a.total - b.total) > EPSILON) return a.total > b.total;
    return a.least > b.least;
  }
}
