const LOCK = 'wrestplank-window-';

function randomId(): string {
  return [...crypto.getRandomValues(new Uint8Array(4))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

const id = randomId();

/** Held for as long as the window lives; the browser lets go of it whatever the window dies of. */
const held = 'locks' in navigator ? new Promise<void>((resolve) => {
  void navigator.locks.request(LOCK + id, () => {
    resolve();
    return new Promise<never>(() => undefined);
  });
}) : Promise.resolve();

/** Tells the parcels of a window that is gone from those another open window is still sending. */
export const claimWindow = {
  id,
  /** Without locks every parcel counts as left behind: sending one twice is acknowledged once. */
  async isOrphan(): Promise<(windowId: string) => boolean> {
    if (!('locks' in navigator)) return () => true;
    await held;
    const { held: locks = [] } = await navigator.locks.query();
    const alive = new Set(locks.map(({ name }) => name));
    return (windowId) => !alive.has(LOCK + windowId);
  },
};
