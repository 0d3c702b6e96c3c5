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

/** Listens for the window being left: Electron's says so before it hides, a browser's when hidden. */
export function watchLeaving(): void {
  window.trotwell?.onLeave(handOverAll);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void handOverAll();
  });
}
