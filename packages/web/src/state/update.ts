// Keeps the page for use without a network, and tells when a newer version is there. Nothing is reloaded
// before the user asks for it.
import { signal } from "@preact/signals";

/** Whether the page is kept on the device for use without a network; `undefined` while that is not known. */
export const isKeptOffline = signal<boolean | undefined>(undefined);
/** `waiting`: a newer version is on the device and comes with the next reload. */
export const update = signal<"none" | "waiting">("none");

let registration: ServiceWorkerRegistration | undefined;
let isAsked = false;

/** Keeps all rooms of the page in the background. Without a secure address there is no such thing. */
export async function keepOffline(): Promise<void> {
  const container = navigator.serviceWorker as ServiceWorkerContainer | undefined;
  if (!container || import.meta.env.DEV) {
    isKeptOffline.value = false;
    return;
  }
  const hadVersion = container.controller !== null;
  try {
    registration = await container.register(new URL("sw.js", document.baseURI));
  } catch {
    // Said on the first screen: this page needs its network.
    isKeptOffline.value = false;
    return;
  }
  follow(registration, hadVersion);
  container.addEventListener("controllerchange", () => {
    if (isAsked) location.reload();
    // Another tab asked for it: this one still runs the version before.
    else if (hadVersion) update.value = "waiting";
  });
  document.addEventListener("visibilitychange", () => {
    // Without a network there is nothing newer to be had.
    if (document.visibilityState === "visible") registration?.update().catch(() => undefined);
  });
  await container.ready;
  isKeptOffline.value = true;
}

function follow(of: ServiceWorkerRegistration, hadVersion: boolean): void {
  const look = (): void => {
    if (of.waiting && hadVersion) update.value = "waiting";
  };
  look();
  of.addEventListener("updatefound", () => {
    of.installing?.addEventListener("statechange", look);
  });
}

/** Takes the newer version; every answer is on the device already. */
export function reloadToNew(): void {
  isAsked = true;
  if (registration?.waiting) registration.waiting.postMessage("take-over");
  else location.reload();
}
