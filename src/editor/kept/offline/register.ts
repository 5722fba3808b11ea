import { create } from 'zustand';

/** What there is to tell about the copy of the tool that is kept on this device. */
export interface OfflineState {
  /** Everything has just been stored: from now on it starts without a network. Told once. */
  readonly stored: boolean;
  /** A newer version lies ready; it stays out until the person takes it. */
  readonly ready: boolean;
  /** A newer version was taken in another tab; this page goes on with what it has loaded. */
  readonly overtaken: boolean;
}

export const useOffline = create<OfflineState>(() => ({ stored: false, ready: false, overtaken: false }));

const TOLD = 'showface:works-offline';
/** A page left open looks for a newer version this often at most. */
const LOOK_EVERY_MS = 60 * 60 * 1000;

let waiting: ServiceWorker | null = null;
let asked = false;

/** Keeps the tool on the device where the browser can (secure addresses only), and watches for newer versions. */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const hadOne = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (hadOne) useOffline.setState({ ready: false, overtaken: true });
  });
  try {
    const registration = await navigator.serviceWorker.register('./offline.js', { scope: './' });
    watch(registration);
    lookNowAndThen(registration);
  } catch {
    // Storage may be blocked or full; the tool then needs the network to start.
  }
}

/** Puts the newer version in and starts this page anew with it. What is kept must be written by then. */
export function takeNewVersion(): void {
  asked = true;
  if (waiting) waiting.postMessage({ type: 'SKIP_WAITING' });
  else location.reload();
}

export const dismissOffline = (): void =>
  useOffline.setState({ stored: false, ready: false, overtaken: false });

function watch(registration: ServiceWorkerRegistration): void {
  const offer = (worker: ServiceWorker) => {
    waiting = worker;
    useOffline.setState({ ready: true });
  };
  if (registration.waiting && registration.active) offer(registration.waiting);
  const follow = (worker: ServiceWorker | null) => {
    if (!worker) return;
    const isUpdate = registration.active !== null;
    worker.addEventListener('statechange', () => {
      if (isUpdate && worker.state === 'installed') offer(worker);
      if (!isUpdate && worker.state === 'activated') tellOnce();
    });
  };
  follow(registration.installing);
  registration.addEventListener('updatefound', () => follow(registration.installing));
}

function tellOnce(): void {
  try {
    if (localStorage.getItem(TOLD)) return;
    localStorage.setItem(TOLD, 'told');
  } catch {
    // Without storage it is told at each first visit.
  }
  useOffline.setState({ stored: true });
}

function lookNowAndThen(registration: ServiceWorkerRegistration): void {
  let looked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - looked < LOOK_EVERY_MS) return;
    looked = Date.now();
    // Without a network there is nothing newer to find.
    registration.update().catch(() => undefined);
  });
}
