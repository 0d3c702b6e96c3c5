/**
 * Minutes of a session as they are shown: half minutes, rounded down, because nobody times 12.3 min
 * and rounding up could pass a cap. Plans keep the exact value.
 * @example
 * shownMinutes(12.3) // => 12
 * shownMinutes(12.6) // => 12.5
 */
export function shownMinutes(minutes: number): number {
  return Math.floor(minutes * 2 + 1e-6) / 2;
}

/**
 * A week's run-minutes as they are shown: the sum of its sessions as they are shown.
 * @example shownWeekMinutes({ sessions: [{ runMinutes: 12.3 }, { runMinutes: 12.6 }] }) // => 24.5
 */
export function shownWeekMinutes(week: {
  readonly sessions: readonly { readonly runMinutes: number }[];
}): number {
  return week.sessions.reduce((sum, { runMinutes }) => sum + shownMinutes(runMinutes), 0);
}
