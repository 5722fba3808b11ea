/**
 * What a worker of its own is asked for; null when that takes longer than `patience` milliseconds. The worker is
 * ended either way: whatever is in a file, nothing of it goes on.
 */
export async function askOnce<T>(worker: Worker, asked: Promise<T>, patience: number): Promise<T | null> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tooLong = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), patience);
  });
  try {
    return await Promise.race([asked, tooLong]);
  } finally {
    clearTimeout(timer);
    worker.terminate();
  }
}
