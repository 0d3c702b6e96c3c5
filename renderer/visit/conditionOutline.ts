interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A closed or open line that runs smoothly through its spots (Catmull-Rom as cubic Béziers). */
function smooth(spots: readonly Spot[]): string {
  const at = (index: number) => spots[Math.min(spots.length - 1, Math.max(0, index))]!;
  const start = at(0);
  let path = `M${start.x} ${start.y}`;
  for (let i = 0; i < spots.length - 1; i++) {
    const [before, from, to, after] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const c1 = { x: from.x + (to.x - before.x) / 6, y: from.y + (to.y - before.y) / 6 };
    const c2 = { x: to.x - (after.x - from.x) / 6, y: to.y - (after.y - from.y) / 6 };
    path += ` C${fix(c1.x)} ${fix(c1.y)} ${fix(c2.x)} ${fix(c2.y)} ${fix(to.x)} ${fix(to.y)}`;
  }
  return path;
}

const fix = (value: number) => Number(value.toFixed(1));

/**
 * The trunk of a dog, head to the left, at a body condition score: its outline from above and from
 * the side, as SVG paths. Proportions are drawn by eye, to show the direction and not a measure.
 */
export function conditionOutline(score: number): { fromAbove: string; fromSide: string } {
  const over = score - 5;
  const half = [
    { x: 2, y: 7 },
    { x: 22, y: 15 + over },
    { x: 48, y: 18 + over * 1.2 },
    { x: 82, y: Math.max(4.5, 11.5 + over * 2.7) },
    { x: 106, y: 14 + over * 1.3 },
    { x: 124, y: 4 + Math.max(0, over) * 0.5 },
  ];
  const far = [...half].reverse().map(({ x, y }) => ({ x, y: -y }));
  const back = [
    { x: 4, y: 10 },
    { x: 14, y: 3 },
    { x: 50, y: 2 },
    { x: 92, y: 2 - Math.max(0, over) * 0.5 },
    { x: 118, y: 4 },
    { x: 127, y: 14 },
  ];
  const belly = [
    { x: 124, y: 26 + over * 0.6 },
    { x: 110, y: Math.max(15, 25 + over * 2.4) },
    { x: 86, y: Math.max(22, 33 + over * 3) },
    { x: 46, y: 45 + over * 1.2 },
    { x: 18, y: 38 + over * 0.8 },
    { x: 5, y: 24 },
    { x: 4, y: 10 },
  ];
  return {
    fromAbove: `${smooth([...half, ...far])} Z`,
    fromSide: `${smooth([...back, ...belly])} Z`,
  };
}
