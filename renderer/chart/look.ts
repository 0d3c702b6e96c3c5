/** Colours and letters of the page, as a canvas needs them. */
export interface Look {
  readonly paper: string;
  readonly sheet: string;
  readonly sunk: string;
  readonly rule: string;
  readonly soft: string;
  readonly ink: string;
  readonly accent: string;
  readonly wash: string;
  readonly ochre: string;
  readonly font: string;
  /** Size of small text, px; follows the text size of the page. */
  readonly size: number;
}

const TOKENS = {
  paper: '--paper',
  sheet: '--sheet',
  sunk: '--sheet-sunk',
  rule: '--rule',
  soft: '--ink-soft',
  ink: '--ink',
  accent: '--accent',
  wash: '--accent-wash',
  ochre: '--ochre',
} as const satisfies Partial<Record<keyof Look, string>>;

/**
 * Reads the tokens as they stand at a place of the page: a probe's colour resolves what a canvas
 * cannot, the two schemes, and the system's own colours where it forces them.
 */
export function readLook(at: Element): Look {
  const probe = document.createElement('span');
  probe.setAttribute('aria-hidden', 'true');
  // Else every colour would be the one that the system forces on letters.
  probe.style.setProperty('forced-color-adjust', 'none');
  probe.style.fontSize = 'var(--text-s)';
  // One for each, so that the page works its styles out once for all of them.
  const swatches = Object.entries(TOKENS).map(([name, token]) => {
    const swatch = document.createElement('span');
    swatch.style.setProperty('forced-color-adjust', 'none');
    swatch.style.color = `var(${token})`;
    probe.append(swatch);
    return [name, swatch] as const;
  });
  at.append(probe);
  const { fontFamily, fontSize } = getComputedStyle(probe);
  const colours = Object.fromEntries(
    swatches.map(([name, swatch]) => [name, getComputedStyle(swatch).color]),
  ) as Record<keyof typeof TOKENS, string>;
  const size = Math.round(parseFloat(fontSize) || 14) - 1;
  probe.remove();
  return { ...colours, font: fontFamily, size };
}

/** Calls whenever the page's colours or letters may have changed. @returns what ends it */
export function onLookChange(changed: () => void): () => void {
  const queries = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map((query) =>
    matchMedia(query),
  );
  for (const query of queries) query.addEventListener('change', changed);
  const root = new MutationObserver(changed);
  root.observe(document.documentElement, { attributeFilter: ['data-theme', 'data-text'] });
  return () => {
    root.disconnect();
    for (const query of queries) query.removeEventListener('change', changed);
  };
}
