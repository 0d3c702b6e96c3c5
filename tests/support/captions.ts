// What a caption says in words and signs, worked out: '1.2–1.4 × RER, prone to gain' is 1.2 and 1.4
// times resting energy. A number beside its caption is then held to what the reader is told it is.

interface Told {
  readonly mid: number;
  readonly low?: number;
  readonly high?: number;
}

/** '1.4', '1.2–1.4', '98 ± 29' or '61 (44–74)'. */
function factorOf(text: string): Told {
  const [first, second, third] = [...text.matchAll(/[\d.]+/g)].map(Number);
  if (second === undefined) return { mid: first! };
  if (third !== undefined) return { mid: first!, low: second, high: third };
  if (text.includes('±')) return { mid: first!, low: first! - second, high: first! + second };
  return { mid: (first! + second) / 2, low: first!, high: second };
}

/** A caption that begins with a factor of `RER` or of a power of `kg`. */
export function toldBy(caption: string, of: { readonly kg: number; readonly rer: number }): Told {
  const [factor, quantity] = caption.split(' × ');
  const power = /kg\^([\d.]+)/.exec(quantity!);
  const unit = power === null ? of.rer : of.kg ** Number(power[1]);
  const told = factorOf(factor!);
  return Object.fromEntries(
    Object.entries(told).map(([key, value]) => [key, (value as number) * unit]),
  ) as unknown as Told;
}

/** '95 × kg^0.75 × 1.8 / 1.6 (intact)': a product of numbers, quotients and one power of the weight. */
export function product(formula: string, kg: number): number {
  return formula
    .replaceAll(/ \(\w+\)/g, '')
    .split(' × ')
    .map((part) => {
      if (part.startsWith('kg^')) return kg ** Number(part.slice('kg^'.length));
      const [over, under = 1] = part.split(' / ').map(Number);
      return over! / under;
    })
    .reduce((a, b) => a * b);
}
