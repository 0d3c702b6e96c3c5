type HandOver = () => Promise<unknown>;

const waiting = new Set<HandOver>();

/** Has something handed over when the window is left. @returns a way to stop */
export function whenLeaving(handOver: HandOver): () => void {
  waiting.add(handOver);
  return () => waiting.delete(handOver);
}

async function handOverAll(): Promise<void> {
  await Promise.allSettled([...waiting].map((handOver) => handOver()));
}

/**
 * Listens for the window being left: Electron's says so before it hides, a browser's when hidden.
 * @param wouldLose true while something typed would be lost; a browser then asks before it leaves
 */
export function watchLeaving(wouldLose: () => boolean): void {
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void handOverAll();
  });
  if (window.trotwell !== undefined) {
    // Electron's window would not ask, but stay open without a word.
    window.trotwell.onLeave(handOverAll);
    return;
  }
  window.addEventListener('beforeunload', (event) => {
    if (wouldLose()) event.preventDefault();
  });
}
