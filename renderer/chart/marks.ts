/** How something is drawn, as the key to a chart shows it. */
export type KeyMark =
  | 'dot'
  | 'diamond'
  | 'dot-line'
  | 'ring-dashes'
  | 'line'
  | 'ink-line'
  | 'dashes'
  | 'upright-dashes'
  | 'corridor'
  | 'band'
  | 'box'
  | 'dashed-box'
  | 'filled-box';

/** One entry of the key to a chart. */
export interface KeyEntry {
  readonly mark: KeyMark;
  readonly words: string;
}

export const MARK_WIDTH = 24;
export const MARK_HEIGHT = 12;
