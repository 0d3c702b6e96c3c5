interface Spot {
  readonly x: number;
  readonly y: number;
}

type Point = readonly [x: number, y: number];

/** A closed line that runs smoothly through its points (Catmull-Rom as cubic Béziers). */
function outline(points: readonly Point[]): string {
  const spots = points.map(([x, y]): Spot => ({ x, y }));
  const at = (index: number) => spots[(index + spots.length) % spots.length]!;
  let path = `M${fix(at(0).x)} ${fix(at(0).y)}`;
  for (let i = 0; i < spots.length; i++) {
    const [before, from, to, after] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const c1 = { x: from.x + (to.x - before.x) / 6, y: from.y + (to.y - before.y) / 6 };
    const c2 = { x: to.x - (after.x - from.x) / 6, y: to.y - (after.y - from.y) / 6 };
    path += ` C${fix(c1.x)} ${fix(c1.y)} ${fix(c2.x)} ${fix(c2.y)} ${fix(to.x)} ${fix(to.y)}`;
  }
  return `${path} Z`;
}

const fix = (value: number) => Number(value.toFixed(1));
const IDEAL = 5;

// Proportions are drawn by eye, to show the direction of a body condition score and not a measure.

/** A dog from above as an SVG path, 160 long, head to the left, its spine at y = 0. */
export function dogFromAbove(score: number): string {
  const over = score - IDEAL;
  const fat = Math.max(0, over);
  const half: Point[] = [
    [1, 3],
    [12, 5],
    [22, 9.5],
    [33, 10],
    [44, 8 + fat * 0.6],
    [58, 13 + over * 0.7],
    [78, 17 + over * 1.1],
    [98, 15.5 + over * 1.7],
    [114, Math.max(5.5, 11 + over * 2.4)],
    [130, 14 + over * 1.1],
    [145, 11 + over * 0.6],
    [154, 4],
  ];
  return outline([...half, ...[...half].reverse().map(([x, y]): Point => [x, -y])]);
}

/** A dog from the side as an SVG path, standing, head to the left, in a box of 176 by 124. */
export function dogFromSide(score: number): string {
  const over = score - IDEAL;
  const fat = Math.max(0, over);
  const lean = Math.min(0, over);
  return outline([
    [6, 37],
    [17, 30],
    [27, 26],
    [33, 17],
    [45, 15],
    [54, 24],
    [63, 35 - fat * 0.4],
    [76, 42 - fat * 0.4],
    [100, 44 - lean * 0.4 - fat * 0.7],
    [126, 43 - lean * 0.6 - fat * 0.8],
    [144, 46 - lean * 0.6 - fat * 0.4],
    [152, 54],
    [154, 68],
    [151, 80],
    [160, 94],
    [158, 108],
    [156, 119],
    [145, 119],
    [149, 108],
    [147, 96],
    [134, 84],
    [124, Math.max(58, 66 + over * 3.4)],
    [104, Math.max(66, 75 + over * 3)],
    [84, 81 + over * 1.6],
    [76, 86 + over * 0.5],
    [75, 104],
    [76, 119],
    [65, 119],
    [66, 104],
    [62, 84],
    [55, 68 + fat * 0.7],
    [48, 52 + fat * 0.8],
    [36, 44 + fat * 0.6],
    [20, 45],
    [8, 43],
  ]);
}

/** The legs of the other side, behind the outline. */
export const FAR_LEGS =
  'M86 80 C86 94 85 104 86 113 C86 117 79 117 79 113 M126 76 C132 88 140 92 139 102 C139 108 141 110 140 113 C139 117 132 117 133 112';
/** Ear, eye and tail, as open lines. */
export const SIDE_DETAILS =
  'M42 16 C49 20 50 30 44 36 C39 33 38 24 41 17 M26.5 31 L27.5 31 M152 52 C162 46 170 36 172 24';
export const ABOVE_DETAILS =
  'M30 9 C34 15 42 15 45 10 M30 -9 C34 -15 42 -15 45 -10 M154 0 C164 1 172 5 180 3';
